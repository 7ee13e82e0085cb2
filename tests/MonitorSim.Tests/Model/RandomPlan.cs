using System.Text.Json;
using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>A random plan that is legal, and a recording for it, as texts; the same for the same seed.</summary>
internal sealed record RandomPlan(string Json, string Csv)
{
    public static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly string[] Names = ["bridge", "x axis", "table"];

    public static RandomPlan Of(int seed)
    {
        var dice = new Dice(seed);
        var trace = new RandomTrace(dice);
        var axes = Names.Take(dice.Pick(1, 1, 2, 2, 3)).Select(name => new RandomAxis(dice, trace, name)).ToList();
        var signals = Signals(dice, trace);
        var functions = axes.SelectMany(axis => Enumerable.Range(0, dice.Next(1, 4)).Select(i => (Axis: axis, Function: RandomMonitors.Function(dice, axis), Index: i))).ToList();
        var names = functions.Select(f => (f.Axis.Name, $"{f.Function}{dice.Pick(" ", "_")}{f.Index}")).ToList();
        var expressions = new RandomExpressions(dice, [.. signals.Select(signal => signal.Key)], names, [.. axes.Select(axis => axis.Name)]);
        foreach (var axis in axes)
        {
            axis.Plan["stops"] = new RandomStops(dice, axis, expressions).Next();
            var monitors = new RandomMonitors(dice, axis, expressions);
            axis.Plan["monitors"] = new JsonArray([.. functions.Zip(names).Where(f => f.First.Axis == axis).Select(f => monitors.Next(f.Second.Item2, f.First.Function))]);
        }

        var plan = Head(dice, trace);
        plan["signals"] = signals;
        if (dice.Chance(75)) plan["acknowledge"] = Acknowledge(dice);
        if (axes.Count > 1 && dice.Chance(60)) plan["groups"] = Groups(dice, axes.Count);
        plan["axes"] = new JsonObject(axes.Select(axis => KeyValuePair.Create<string, JsonNode?>(axis.Name, axis.Plan)));
        return new(plan.ToJsonString(Readable), trace.Csv());
    }

    private static JsonObject Head(Dice dice, RandomTrace trace)
    {
        var plan = new JsonObject { ["plan"] = 1, ["title"] = "random", ["trace"] = trace.Format() };
        if (dice.Chance(40))
        {
            var cycle = trace.Step * dice.Pick(1, 2, 3, 5) / 2;
            plan["cycle"] = RandomAxis.TimeText(cycle);
            if (dice.Chance(60)) plan["phase"] = RandomAxis.TimeText(dice.Pick(0, cycle / 2, cycle / 4, cycle - 1));
        }

        if (dice.Chance(30)) plan["inputDelay"] = RandomAxis.TimeText(dice.Time(trace.Step, 3));
        if (dice.Chance(20)) plan["reactionDelay"] = RandomAxis.TimeText(dice.Time(trace.Step, 3));
        if (trace.Missing is not null) plan["missing"] = trace.Missing;
        if (trace.Missing == "trip" && dice.Chance(50)) plan["gap"] = RandomAxis.TimeText(trace.Step * dice.Pick(3, 5, 7));
        return plan;
    }

    private static JsonObject Signals(Dice dice, RandomTrace trace)
    {
        var (on, off) = dice.Pick(("1", "0"), ("true", "false"), ("on", "off"), ("True", "False"));
        var signals = new JsonObject();
        foreach (var (name, column, percent) in new[] { ("gateOpen", "DI_1", 10), ("hold on", "DI 2", 12), ("enable", "DI_3", 6), ("eStop", "DI_4", 8), ("reset", "DI_5", 25) })
        {
            signals[name] = new JsonObject { ["column"] = column };
            trace.Add(column, RandomWalks.Signal(dice, trace.Count, percent).Select(isOn => dice.Chance(2) ? "" : isOn ? on : off));
        }

        signals["handheld"] = new JsonObject { ["column"] = "Mode", ["equals"] = 2 };
        trace.Add("Mode", RandomWalks.Signal(dice, trace.Count, 10).Select(isOn => isOn ? "2" : dice.Pick("1", "3")));
        var from = dice.Next(trace.Count / 2);
        signals["window"] = new JsonObject
        {
            ["windows"] = new JsonArray(new JsonArray(Time(trace, from), Time(trace, from + dice.Next(1, 10)))),
        };
        return signals;
    }

    private static string Time(RandomTrace trace, int sample) => RandomAxis.TimeText(sample * trace.Step);

    private static JsonObject Acknowledge(Dice dice)
    {
        var acknowledge = new JsonObject { ["signal"] = "reset" };
        if (dice.Chance(60)) acknowledge["on"] = dice.Pick("release", "press");
        return acknowledge;
    }

    private static JsonObject Groups(Dice dice, int count) => count == 2 || dice.Chance(40)
        ? new() { ["pair"] = new JsonArray(Names[0], Names[1]) }
        : new() { ["pair"] = new JsonArray(Names[0], Names[1]), ["other"] = new JsonArray(Names[1], Names[2]) };
}
