using System.Text.Json;
using Json.Schema;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

public class ResultSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(global::MonitorSim.Replays.ResultSchema.Json());

    private static bool Accepts(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    private static string Result(string folder)
    {
        var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
        return global::MonitorSim.Replays.ResultJson.Text(Replay.Run(plan, PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv"))));
    }

    [Fact]
    public void It_accepts_the_results_of_the_demo()
    {
        var folders = Directory.GetDirectories(Path.Combine(AppContext.BaseDirectory, "traces"));
        Assert.NotEmpty(folders);
        Assert.All(folders, folder => Assert.True(Accepts(Result(folder)), folder));
    }

    [SkippableFact]
    public void It_accepts_the_results_of_worked_cases()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository");
        var folders = Directory.EnumerateFiles(SharedFolder.Cases!, "plan.json", SearchOption.AllDirectories).Select(plan => Path.GetDirectoryName(plan)!).Where((_, index) => index % 10 == 0).ToList();
        Assert.NotEmpty(folders);
        Assert.All(folders, folder => Assert.True(Accepts(Result(folder)), folder));
    }

    [Fact]
    public void It_refuses_what_is_missing_misspelt_or_new()
    {
        var result = Result(Path.Combine(AppContext.BaseDirectory, "traces", "bridge-gate-speed"));
        Assert.True(Accepts(result));
        Assert.Contains("\"verdict\": \"tripped\"", result, StringComparison.Ordinal);
        foreach (var (found, wrong) in new[] { ("\"verdict\"", "\"verdikt\""), ("\"tripped\"", "\"Tripped\""), ("\"result\": 1", "\"result\": 2"), ("\"requestedAt\"", "\"requested\""), ("\"stop 1\"", "\"stop1\""), ("\"StoppingToOff\"", "\"Stopping\"") })
        {
            Assert.Contains(found, result, StringComparison.Ordinal);
            Assert.False(Accepts(result.Replace(found, wrong, StringComparison.Ordinal)), wrong);
        }
    }
}
