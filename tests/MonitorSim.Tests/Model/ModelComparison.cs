using System.Text;
using System.Text.Json;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Tests.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Model;

/// <summary>Both answers to one plan and recording.</summary>
internal static class ModelComparison
{
    /// <summary>The product's answer through its own readers.</summary>
    public static string Product(string json, string csv)
    {
        var plan = PlanReader.Parse(json);
        return ResultJson.Text(Replay.Run(plan, Recording(plan, csv)));
    }

    public static Trace Recording(Plan plan, string csv) =>
        TraceReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(csv)), "trace.csv", PlannedTrace.DialectOf(plan.Trace), PlannedTrace.Columns(plan));

    public static string Model(ModelReplay replay) => new ModelResult(replay).Write().ToJsonString();

    /// <summary>What differs; nothing where both agree, causes included.</summary>
    public static List<string> Differences(string model, string product) => [.. ExpectedResult.Differences(model, product), .. CauseDifferences(model, product)];

    /// <summary>What differs in the causes of states alone.</summary>
    public static IEnumerable<string> CauseDifferences(string expected, string found)
    {
        var (ours, theirs) = (Causes(expected), Causes(found));
        return ours.Except(theirs).Select(line => $"cause: expected {line}").Concat(theirs.Except(ours).Select(line => $"cause: found {line}"));
    }

    // A state that is left and taken again in one cycle is no change.
    private static List<string> Causes(string result)
    {
        using var json = JsonDocument.Parse(result);
        var lines = new List<string>();
        foreach (var axis in json.RootElement.GetProperty("states").EnumerateArray())
        {
            var last = nameof(ModelState.Running);
            foreach (var change in axis.GetProperty("changes").EnumerateArray())
            {
                var state = change.GetProperty("state").GetString()!;
                if (state != last) lines.Add($"{axis.GetProperty("axis")} at {change.GetProperty("time").GetDecimal():0.#########} s {state}: {change.GetProperty("cause")}");
                last = state;
            }
        }

        return lines;
    }
}
