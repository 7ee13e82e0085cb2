using PublicApiGenerator;

namespace MonitorSim.Tests;

public sealed class PublicApiTests
{
    /// <summary>The public API is what was approved. To accept a change, run the tests with MONITORSIM_APPROVE=1 and commit the file.</summary>
    [Fact]
    public void IsApproved()
    {
        // Razor makes every component a public class, and so what they show each other; they are no API.
        var options = new ApiGeneratorOptions { IncludeAssemblyAttributes = false, DenyNamespacePrefixes = ["MonitorSim.Reports.Components", "MonitorSim.Reports.Scenes", "System", "Microsoft"] };
        var api = string.Join("\n\n", new[] { typeof(Replay).Assembly, typeof(global::MonitorSim.Plots.ReplayPlot).Assembly, typeof(global::MonitorSim.Reports.HtmlReport).Assembly }.Select(assembly => assembly.GeneratePublicApi(options))).ReplaceLineEndings("\n") + "\n";
        var path = Approved();
        if (Environment.GetEnvironmentVariable("MONITORSIM_APPROVE") == "1") File.WriteAllText(path, api);
        var (approved, found) = (File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n'), api.Split('\n'));
        Assert.True(approved.SequenceEqual(found), "The public API changed. To accept it, run the tests with MONITORSIM_APPROVE=1 and commit PublicApi.approved.txt.\n"
            + string.Join('\n', approved.Except(found).Select(line => "- " + line).Concat(found.Except(approved).Select(line => "+ " + line))));
    }

    private static string Approved([System.Runtime.CompilerServices.CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "PublicApi.approved.txt");
}
