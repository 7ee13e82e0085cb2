using System.Text.Json.Nodes;
using MonitorSim.Plans;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>The worked cases beside the repository that say what tuning finds: every limit, its staircase, what would keep it.</summary>
public sealed class TunedCasesTests
{
    [SkippableTheory]
    [InlineData("basic")]
    [InlineData("full")]
    public void EveryWorkedCase(string set)
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var folders = Directory.GetDirectories(Path.Combine(SharedFolder.Cases!, set)).Where(folder => File.Exists(Path.Combine(folder, "tuned.json"))).ToList();
        Assert.True(folders.Count > 20, $"only {folders.Count} cases in '{set}'");
        Assert.Empty(folders.SelectMany(Differences));
    }

    private static IEnumerable<string> Differences(string folder)
    {
        var expected = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "tuned.json")))!["monitors"]!.AsArray().Select(entry => Fields(entry!)).Order(StringComparer.Ordinal).ToList();
        List<string> found;
        try
        {
            var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
            var result = Tune.Run(plan, [PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv"))]);
            found = [.. JsonNode.Parse(TuneBench.Json(result))!["monitors"]!.AsArray().Select(entry => Fields(entry!)).Order(StringComparer.Ordinal)];
        }
        catch (InputException wrong)
        {
            found = [wrong.Message];
        }

        return expected.Except(found).Select(line => $"{Path.GetFileName(folder)}: missing {line}").Concat(found.Except(expected).Select(line => $"{Path.GetFileName(folder)}: not expected {line}"));
    }

    // Times to the nanosecond, values to ten digits.
    private static string Fields(JsonNode entry)
    {
        string Value(JsonNode? node) => node is null ? "-" : FormattableString.Invariant($"{node.GetValue<double>() + 0.0:G10}");
        string Time(JsonNode? node) => node is null ? "-" : FormattableString.Invariant($"{Math.Round(node.GetValue<double>() * 1e9)} ns");
        var names = string.Join(' ', new[] { "axis", "monitor", "side", "unit" }.Select(name => entry[name]!.GetValue<string>()));
        var frontier = string.Join(", ", entry["frontier"]!.AsArray().Select(step => $"{Time(step!["filter"])}: {Value(step["limit"])}"));
        return $"{names} {entry["level"]?.ToString() ?? "-"} filter {Time(entry["filter"])} limit {Value(entry["limit"])} critical {Value(entry["critical"])} "
            + $"filterAbove {Time(entry["filterAbove"])} delayAbove {Time(entry["delayAbove"])} frontier {frontier} run {Value(entry["runs"]![0]!["critical"])}";
    }
}
