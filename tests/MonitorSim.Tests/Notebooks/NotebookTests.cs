using System.Runtime.CompilerServices;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Notebooks;

/// <summary>The lessons run without a window, and print what stands in them. To accept a change, run the tests with MONITORSIM_APPROVE=1 and commit the notebooks.</summary>
public class NotebookTests
{
    private static readonly Lazy<(int ExitCode, string Text)> Restored = new(() => Dotnet("tool", "restore"));
    private static readonly JsonSerializerOptions AsWritten = new() { WriteIndented = true, IndentSize = 1, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static TheoryData<string> Lessons => [.. Directory.EnumerateFiles(Folder(), "*.ipynb").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [SkippableTheory]
    [MemberData(nameof(Lessons))]
    public void Prints_what_stands_in_it(string lesson)
    {
        Skip.IfNot(File.Exists(Path.Combine(Folder(), "../src/MonitorSim.Cli/bin/Release/net10.0/MonitorSim.dll")), "the lessons load the Release build: dotnet build -c Release");
        Skip.IfNot(Restored.Value.ExitCode == 0, $"dotnet-repl, which runs the lessons, cannot be restored: {Restored.Value.Text}");
        var path = Path.Combine(Folder(), lesson);
        var cells = CodeCells(JsonNode.Parse(File.ReadAllText(path))!);
        var run = CodeCells(Run(path));
        Assert.Equal(cells.Count, run.Count);
        if (Environment.GetEnvironmentVariable("MONITORSIM_APPROVE") == "1") Accept(path, run);
        else
            for (var k = 0; k < cells.Count; k++) Assert.Equal(Printed(cells[k]), Printed(run[k]));
    }

    /// <summary>A lesson ends with questions and their answers.</summary>
    [Theory]
    [MemberData(nameof(Lessons))]
    public void Ends_with_questions_and_answers(string lesson)
    {
        var last = JsonNode.Parse(File.ReadAllText(Path.Combine(Folder(), lesson)))!["cells"]!.AsArray()[^1]!;
        var text = string.Concat(last["source"]!.AsArray().Select(line => line!.GetValue<string>()));
        Assert.Equal("markdown", last["cell_type"]!.GetValue<string>());
        Assert.StartsWith("## Questions", text);
        Assert.Contains("**Answers.**", text);
    }

    private static JsonNode Run(string path)
    {
        var result = Path.Combine(Path.GetTempPath(), $"monitorsim-{Guid.NewGuid():N}.ipynb");
        try
        {
            var (exitCode, text) = Dotnet("tool", "run", "dotnet-repl", "--", "--run", path, "--exit-after-run", "--output-format", "ipynb", "--output-path", result);
            Assert.True(exitCode == 0 && File.Exists(result), text);
            return JsonNode.Parse(File.ReadAllText(result))!;
        }
        finally
        {
            File.Delete(result);
        }
    }

    private static List<JsonNode> CodeCells(JsonNode notebook) => [.. notebook["cells"]!.AsArray().OfType<JsonNode>().Where(cell => cell["cell_type"]!.GetValue<string>() == "code")];

    /// <summary>What a cell printed; an error fails the test. Pictures are not compared: their fonts are the machine's.</summary>
    private static string Printed(JsonNode cell)
    {
        var outputs = cell["outputs"]!.AsArray().OfType<JsonNode>().ToList();
        foreach (var output in outputs) Assert.False(output["output_type"]!.GetValue<string>() == "error", output.ToJsonString());
        return string.Concat(outputs.Where(output => output["text"] is not null).SelectMany(output => output["text"]!.AsArray()).Select(line => line!.GetValue<string>())).ReplaceLineEndings("\n");
    }

    private static void Accept(string path, List<JsonNode> run)
    {
        var notebook = JsonNode.Parse(File.ReadAllText(path))!;
        var cells = CodeCells(notebook);
        for (var k = 0; k < cells.Count; k++)
        {
            _ = Printed(run[k]);
            cells[k]["outputs"] = run[k]["outputs"]!.DeepClone();
        }

        File.WriteAllText(path, notebook.ToJsonString(AsWritten) + "\n");
    }

    private static (int ExitCode, string Text) Dotnet(params string[] arguments) => Command.Run(Folder(), "dotnet", arguments);

    private static string Folder([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../../notebooks"));
}
