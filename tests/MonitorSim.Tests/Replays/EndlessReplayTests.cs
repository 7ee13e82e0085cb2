using MonitorSim.Plans;
using MonitorSim.Signals;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

public sealed class EndlessReplayTests
{
    private const string Bridge = """
        { "plan": 1, "signals": { "gate": { "column": "gate" } },
          "axes": { "bridge": { "motion": "linear", "channels": { "position": { "column": "p", "unit": "mm" }, "velocity": { "from": "position", "estimator": { "name": "lowPass", "time": "5 ms" } } },
            "stops": { "STO": {} },
            "monitors": [ { "name": "speed", "function": "SLS", "limit": "33 mm/s", "reaction": "none" },
                          { "name": "window", "function": "SOS", "request": "gate", "window": "1 mm", "reaction": "none" } ] } } }
        """;

    /// <summary>Every worked case without simulated motion, sample by sample, its past let go and the replay saved and resumed every few samples, brings what the whole replay brings.</summary>
    [SkippableTheory]
    [InlineData("basic", 1, 7)]
    [InlineData("full", 13, 101)]
    public void News_of_all_steps_together_are_the_whole_result(string suite, int block, int saveEvery)
    {
        var folder = Path.Combine(SharedFolder.Cases ?? "", suite);
        Skip.IfNot(Directory.Exists(folder), $"the worked cases are not here: {folder}");
        var compared = 0;
        foreach (var place in Directory.GetDirectories(folder).Where(place => File.Exists(Path.Combine(place, "expected.json"))).Order(StringComparer.Ordinal))
        {
            var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
            if ((plan.Missing == MissingPolicy.Trip && plan.Gap is null) || plan.Motion == MotionSource.Simulated) continue;
            var trace = PlannedTrace.Read(plan, Path.Combine(place, "trace.csv"));
            var whole = Replay.Run(plan, trace);
            var (news, coverage) = InParts(plan, trace, block, saveEvery);
            Assert.Equal(whole.Trips.Select(trip => trip with { AvoidedBy = new(null, null, null, false) }), news.SelectMany(part => part.Trips));
            Assert.Equal(whole.Excursions, news.SelectMany(part => part.Excursions).OrderBy(e => e.From).ThenBy(e => e.Axis, StringComparer.Ordinal).ThenBy(e => e.Monitor, StringComparer.Ordinal)
                .ThenBy(e => e.Side, StringComparer.Ordinal));
            Assert.Equal(whole.Events, news.SelectMany(part => part.Events));
            Assert.Equal(whole.Coverage, coverage);
            foreach (var output in whole.Outputs)
                Assert.Equal(output.Edges, news.SelectMany(part => part.Outputs).Where(o => (o.Axis, o.Monitor) == (output.Axis, output.Monitor)).SelectMany(o => o.Edges));
            foreach (var axis in whole.States)
                Assert.Equal(axis.Changes, news.SelectMany(part => part.States).Where(s => s.Axis == axis.Axis).SelectMany(s => s.Changes));
            compared++;
        }

        Assert.True(compared > 50, $"only {compared} cases were compared");
    }

    /// <summary>What is kept does not grow with the samples that have passed.</summary>
    [Fact]
    public void A_checkpoint_after_many_samples_is_no_larger_than_one_after_few()
    {
        var replay = new EndlessReplay(PlanReader.Parse(Bridge));
        var sizes = new List<long>();
        for (var k = 0; k < 100_000; k++)
        {
            Step(replay, k);
            if (k % 20_000 == 19_999) sizes.Add(Saved(replay).Length);
        }

        // Two columns, times and the filtered speed of at most 8,192 samples and a few more.
        Assert.All(sizes, size => Assert.InRange(size, 1_000, 8_200 * 4 * 8));
    }

    [Fact]
    public void A_checkpoint_that_is_not_whole_is_refused()
    {
        var replay = new EndlessReplay(PlanReader.Parse(Bridge));
        Step(replay, 0);
        var bytes = Saved(replay).ToArray();
        foreach (var spoiled in new[] { [], bytes[..^1], [.. bytes[..50], (byte)(bytes[50] ^ 1), .. bytes[51..]] })
        {
            var error = Assert.Throws<InputException>(() => EndlessReplay.Resume(PlanReader.Parse(Bridge), new MemoryStream(spoiled)));
            Assert.Contains("no checkpoint, or not whole", error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_checkpoint_of_another_plan_is_refused()
    {
        var replay = new EndlessReplay(PlanReader.Parse(Bridge));
        var other = PlanReader.Parse(Bridge.Replace("33 mm/s", "34 mm/s", StringComparison.Ordinal));
        var error = Assert.Throws<InputException>(() => EndlessReplay.Resume(other, Saved(replay)));
        Assert.Contains("another plan", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gap_that_the_plan_rejects_is_an_error_at_its_sample()
    {
        var replay = new EndlessReplay(PlanReader.Parse(Bridge.Replace("{ \"plan\": 1,", "{ \"plan\": 1, \"gap\": \"5 ms\",", StringComparison.Ordinal)));
        Step(replay, 0);
        Step(replay, 5);
        var error = Assert.Throws<InputException>(() => Step(replay, 11));
        Assert.Contains("sample 2", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Simulated_motion_is_refused()
    {
        var plan = PlanReader.Parse(Bridge.Replace("\"motion\": \"linear\"", "\"motion\": \"linear\", \"plant\": { \"mass\": \"180 kg\" }", StringComparison.Ordinal)
            .Replace("{ \"plan\": 1,", "{ \"plan\": 1, \"motion\": \"simulated\",", StringComparison.Ordinal));
        var error = Assert.Throws<InputException>(() => new EndlessReplay(plan));
        Assert.Contains("simulates no motion", error.Message, StringComparison.Ordinal);
    }

    private static void Step(EndlessReplay replay, int k) =>
        replay.Step(k * 1_000_000L, new Dictionary<string, double> { ["p"] = k % 50 }, new Dictionary<string, bool> { ["gate"] = k % 3000 > 10 });

    private static MemoryStream Saved(EndlessReplay replay)
    {
        var stream = new MemoryStream();
        replay.Save(stream);
        stream.Position = 0;
        return stream;
    }

    private static (List<ReplayNews> News, IReadOnlyList<Coverage> Coverage) InParts(Plan plan, Trace trace, int block, int saveEvery)
    {
        var replay = new EndlessReplay(plan, block);
        var tracks = plan.Signals.Where(signal => signal.Value.Column is not null)
            .ToDictionary(signal => signal.Key, signal => new SignalReader(signal.Value).Read(signal.Key, trace));
        var news = new List<ReplayNews>();
        for (var k = 0; k < trace.Count; k++)
        {
            news.Add(replay.Step(trace.Times[k], replay.Columns.ToDictionary(column => column, column => ((NumberColumn)trace.Find(column)!).Values[k]),
                tracks.ToDictionary(track => track.Key, track => track.Value.At(k))));
            if (k % saveEvery == saveEvery - 1) replay = EndlessReplay.Resume(plan, Saved(replay), block);
        }

        news.Add(replay.Finish());
        return (news, replay.Coverage);
    }
}
