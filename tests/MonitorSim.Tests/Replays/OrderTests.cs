using System.Text.Json;
using System.Text.Json.Nodes;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

/// <summary>The order of axes and monitors in a plan never changes a result.</summary>
public class OrderTests
{
    [SkippableFact]
    public void Worked_cases_turned_around_come_out_the_same()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var compared = 0;
        foreach (var folder in Directory.EnumerateDirectories(Path.Combine(SharedFolder.Cases!, "full")).Order(StringComparer.Ordinal).Where((_, i) => i % 3 == 0))
        {
            if (File.Exists(Path.Combine(folder, "refused.txt"))) continue;
            var text = File.ReadAllText(Path.Combine(folder, "plan.json"));
            Assert.Equal(Result(text, folder), Result(Turned(text), folder));
            compared++;
        }

        Assert.True(compared > 40, $"only {compared} cases");
    }

    [Fact]
    public void Axes_and_monitors_that_trip_and_stop_together_do_so_in_any_order()
    {
        static string Axis(string name, string other) => $$"""
            "{{name}}": { "motion": "linear", "channels": { {{Bench.Channels("pv")}} }, "standstill": "1 mm/s",
              "stops": { "STO": {}, "SS1": { "variant": "r", "deceleration": "1 m/s²", "tolerance": "1 mm/s" }, "SS2": { "variant": "t", "time": "2 ms" }, "SOS": { "window": "1 m" } },
              "monitors": [
                { "name": "b", "function": "SLS", "limit": "5 mm/s", "reaction": "stop 2" },
                { "name": "a", "function": "SLS", "limit": "5 mm/s", "reaction": "stop 1" },
                { "name": "c", "function": "SLS", "limit": "3 mm/s", "request": "{{other}}.a or {{name}}.b", "reaction": "stop 0" } ] }
            """;
        var text = $$"""{ "plan": 1, "groups": { "g": ["x", "y"] }, "axes": { {{Axis("x", "y")}}, {{Axis("y", "x")}} } }""";
        var trace = Bench.Milliseconds(("p", new double[10]), ("v", [0, 5, 6, 4, 4, 3, 0, 0, 9, 0]));
        var result = Replay.Run(PlanReader.Parse(text), trace);
        Assert.Equal(["x.a", "x.b", "y.a", "y.b", "x.c", "y.c"], result.Trips.Where(t => t.Monitor.Length == 1).Select(t => $"{t.Axis}.{t.Monitor}"));
        Assert.Equal(ResultJson.Text(result), ResultJson.Text(Replay.Run(PlanReader.Parse(Turned(text)), trace)));
    }

    private static string Result(string text, string folder)
    {
        var plan = PlanReader.Parse(text, "plan.json");
        return ResultJson.Text(Replay.Run(plan, PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv"))));
    }

    /// <summary>The same plan with axes, monitors, signals, groups and their members in the opposite order.</summary>
    private static string Turned(string text)
    {
        var plan = JsonNode.Parse(text, documentOptions: new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true })!;
        foreach (var member in new[] { "axes", "signals", "groups" })
            if (plan[member] is JsonObject members) plan[member] = new JsonObject(members.Reverse().Select(pair => KeyValuePair.Create(pair.Key, pair.Value?.DeepClone())));
        foreach (var (_, axis) in plan["axes"]!.AsObject())
            if (axis!["monitors"] is JsonArray monitors) axis["monitors"] = new JsonArray([.. monitors.Reverse().Select(monitor => monitor!.DeepClone())]);
        if (plan["groups"] is JsonObject groups)
            foreach (var name in groups.Select(pair => pair.Key).ToList()) groups[name] = new JsonArray([.. groups[name]!.AsArray().Reverse().Select(axis => axis!.DeepClone())]);
        return plan.ToJsonString();
    }
}
