namespace MonitorSim.Tests.Model;

/// <summary>The model itself against the worked cases beside the repository: it has to know what the pages mean before it judges the product.</summary>
public class ModelCasesTests
{
    [SkippableTheory]
    [InlineData("basic")]
    [InlineData("full")]
    public void The_model_gives_the_results_of_the_worked_cases(string set)
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var folders = Directory.GetDirectories(Path.Combine(SharedFolder.Cases!, set)).Where(folder => File.Exists(Path.Combine(folder, "expected.json"))).ToList();
        Assert.True(folders.Count > 50, $"only {folders.Count} cases in '{set}'");
        var wrong = folders.AsParallel().SelectMany(folder => Differences(folder).Select(line => $"{Path.GetFileName(folder)}: {line}")).ToList();
        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    private static List<string> Differences(string folder)
    {
        var expected = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "expected.json")))!.AsObject();
        expected.Remove("expect");
        var model = new ModelReplay(File.ReadAllText(Path.Combine(folder, "plan.json")), File.ReadAllText(Path.Combine(folder, "trace.csv")));
        return ModelComparison.Differences(expected.ToJsonString(), ModelComparison.Model(model));
    }
}
