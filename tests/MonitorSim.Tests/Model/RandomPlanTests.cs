using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Signals;
using MonitorSim.Traces;
using Xunit.Abstractions;

namespace MonitorSim.Tests.Model;

/// <summary>Random plans and recordings, replayed whole, against a literal step-by-step model that shares no code with the product.</summary>
public class RandomPlanTests(ITestOutputHelper output)
{
    private const int Plans = 2_000;

    [Fact]
    public void Every_random_plan_comes_out_as_the_model_says()
    {
        var tally = new ModelTally();
        var wrong = new ConcurrentBag<int>();
        Parallel.For(0, Plans, seed =>
        {
            var plan = RandomPlan.Of(seed);
            var replay = new ModelReplay(plan.Json, plan.Csv);
            if (ModelComparison.Differences(ModelComparison.Model(replay), ModelComparison.Product(plan.Json, plan.Csv)).Count > 0) wrong.Add(seed);
            tally.Count(plan, replay);
        });
        Print(tally);
        if (!wrong.IsEmpty) Assert.Fail($"{wrong.Count} of {Plans} plans differ; seed {wrong.Min()}, made small:\n{Story(RandomPlan.Of(wrong.Min()))}");
        Assert.Equal(Plans, tally["plans"]);
        Assert.All(ModelTally.Required, what => Assert.True(tally[what] > 0, $"no random plan reached: {what}"));
    }

    [Fact]
    public void The_order_of_axes_monitors_groups_and_signals_changes_nothing()
    {
        for (var seed = 0; seed < 80; seed++)
        {
            var plan = RandomPlan.Of(seed);
            var shuffled = Shuffled(plan.Json, new Dice(seed));
            Assert.True(ModelComparison.Product(plan.Json, plan.Csv) == ModelComparison.Product(shuffled, plan.Csv), $"seed {seed}: another order gives another result");
        }
    }

    [Fact]
    public void Sample_by_sample_gives_the_same_bits()
    {
        var compared = 0;
        for (var seed = 0; seed < 80; seed++)
        {
            var (json, csv) = RandomPlan.Of(seed);
            var plan = PlanReader.Parse(json);
            if (plan.Missing == MissingPolicy.Trip && plan.Gap is null) continue;
            var trace = ModelComparison.Recording(plan, csv);
            Assert.True(ModelComparison.Product(json, csv) == ResultJson.Text(Stepped(plan, trace) with { TraceSha256 = trace.Sha256 }), $"seed {seed}: the steps give another result");
            compared++;
        }

        Assert.True(compared > 50, $"only {compared} plans were compared");
    }

    [Fact]
    public void The_culture_changes_nothing()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var plan = RandomPlan.Of(seed);
            var expected = ModelComparison.Product(plan.Json, plan.Csv);
            InCulture.Each(() => Assert.True(expected == ModelComparison.Product(plan.Json, plan.Csv), $"seed {seed}: another culture gives another result"));
        }
    }

    [Fact]
    public void A_difference_is_found_and_made_small()
    {
        var plan = RandomPlan.Of(1);
        var model = ModelComparison.Model(new(plan.Json, plan.Csv));
        var other = JsonNode.Parse(model)!;
        Assert.Empty(ModelComparison.Differences(model, other.ToJsonString()));
        other["coverage"]![0]!["requests"] = 77;
        Assert.Single(ModelComparison.Differences(model, other.ToJsonString()));
    }

    // A passing test's output is not shown by the runner: a build server asks for the counts in a file, and prints it.
    private void Print(ModelTally tally)
    {
        output.WriteLine(tally.ToString());
        if (Environment.GetEnvironmentVariable("MONITORSIM_COUNTS") is { Length: > 0 } file) File.WriteAllText(file, $"{tally}\n");
    }

    private static string Story(RandomPlan plan)
    {
        var small = ModelShrinker.Shrink(plan);
        var differences = ModelShrinker.Differences(small) ?? ["the plan is refused"];
        return $"{string.Join('\n', differences)}\n{small.Json}\n{small.Csv}";
    }

    private static ReplayResult Stepped(Plan plan, Trace trace)
    {
        var session = new ReplaySession(plan);
        var tracks = plan.Signals.Where(signal => signal.Value.Column is not null).ToDictionary(signal => signal.Key, signal => new SignalReader(signal.Value).Read(signal.Key, trace));
        for (var k = 0; k < trace.Count; k++)
        {
            session.Step(trace.Times[k], session.Columns.ToDictionary(column => column, column => ((NumberColumn)trace.Find(column)!).Values[k]),
                tracks.ToDictionary(track => track.Key, track => track.Value.At(k)));
        }

        return session.Finish(trace.Name);
    }

    private static string Shuffled(string json, Dice dice)
    {
        var plan = JsonNode.Parse(json)!;
        foreach (var name in new[] { "axes", "signals", "groups" })
        {
            if (plan[name] is not JsonObject members) continue;
            var list = members.Select(pair => KeyValuePair.Create(pair.Key, pair.Value?.DeepClone())).ToList();
            dice.Shuffle(list);
            plan[name] = new JsonObject(list);
        }

        foreach (var axis in plan["axes"]!.AsObject().Select(pair => pair.Value!.AsObject())) axis["monitors"] = Shuffled(axis["monitors"]!.AsArray(), dice);
        if (plan["groups"] is JsonObject groups)
            foreach (var name in groups.Select(pair => pair.Key).ToList()) groups[name] = Shuffled(groups[name]!.AsArray(), dice);
        return plan.ToJsonString();
    }

    private static JsonArray Shuffled(JsonArray items, Dice dice)
    {
        var list = items.Select(item => item!.DeepClone()).ToList();
        dice.Shuffle(list);
        return [.. list];
    }
}
