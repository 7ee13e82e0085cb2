using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Tests.Model;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

/// <summary>The worked cases beside the repository: small random plans and recordings, with the results of a literal model in exact
/// rational arithmetic that shares no code with this project.</summary>
public class SharedCasesTests
{
    [SkippableTheory]
    [InlineData("basic")]
    [InlineData("full")]
    public void Every_case_comes_out_as_expected(string set)
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var wrong = new List<string>();
        var compared = 0;
        foreach (var folder in Directory.EnumerateDirectories(Path.Combine(SharedFolder.Cases!, set)).Order(StringComparer.Ordinal))
        {
            var name = $"{set}/{Path.GetFileName(folder)}";
            wrong.AddRange(Differences(folder).Select(line => $"{name}: {line}"));
            compared++;
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
        Assert.True(compared > 20, $"only {compared} cases in '{set}'");
    }

    [Fact]
    public void The_comparison_itself_sees_what_differs()
    {
        const string expected = """{"verdict":"tripped","trips":[{"axis":"x","monitor":"m","side":"upper","time":0.1,"value":2,"level":null}],"states":[{"axis":"x","changes":[{"time":1,"state":"Holding"}]}]}""";
        Assert.Empty(ExpectedResult.Differences(expected, expected.Replace(",\"level\":null", "", StringComparison.Ordinal)));
        Assert.Empty(ExpectedResult.Differences(expected, expected.Replace("\"value\":2", "\"value\":2.000000001", StringComparison.Ordinal)));
        foreach (var (right, changed) in new[] { ("\"value\":2", "\"value\":2.00000001"), ("\"time\":0.1", "\"time\":0.100000001"), ("upper", "lower"), ("tripped", "clean"), ("Holding", "TorqueOff"), ("\"level\":null", "\"level\":0") })
            Assert.NotEmpty(ExpectedResult.Differences(expected, expected.Replace(right, changed, StringComparison.Ordinal)));
        Assert.Equal(["trips[x/m/upper/100000000]: missing"], ExpectedResult.Differences(expected, """{"verdict":"tripped","trips":[],"states":[{"axis":"x","changes":[{"time":1,"state":"Holding"}]}]}"""));
    }

    private static List<string> Differences(string folder)
    {
        var refused = File.Exists(Path.Combine(folder, "refused.txt"));
        string found;
        try
        {
            var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
            found = ResultJson.Text(Replay.Run(plan, PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv"))));
        }
        catch (InputException e)
        {
            return refused ? [] : [$"refused: {e.Message}"];
        }

        if (refused) return ["has to be refused"];
        var expected = File.ReadAllText(Path.Combine(folder, "expected.json"));
        return [.. ExpectedResult.Differences(expected, found), .. ModelComparison.CauseDifferences(expected, found)];
    }
}
