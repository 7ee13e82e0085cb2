namespace MonitorSim.Tests.Cli;

/// <summary>Ctrl-C ends every command: with a word, with the exit code that shells give, and without half a file.</summary>
public sealed class InterruptTests : CommandTest
{
    private static readonly (int, string) Cancelled = (130, "cancelled; no file is left half-written\n");

    /// <summary>Standard input that stays open and silent holds nobody.</summary>
    [SkippableTheory]
    [InlineData("describe", "-")]
    [InlineData("fit", "PLAN", "-", "--json", "OUT")]
    [InlineData("explain", "PLAN", "-")]
    [InlineData("tune", "PLAN", "-", "--json", "OUT")]
    [InlineData("check", "-", "TRACE", "--junit", "OUT")]
    [InlineData("synth", "-", "-o", "OUT")]
    public void WaitingForStandardInput(params string[] arguments)
    {
        using var command = new Interrupted([.. arguments.Select(Named)]);
        command.Feed("time,position\n");
        Assert.Equal(Cancelled, command.Stop());
        Assert.Empty(Directory.GetFiles(Folder));
    }

    /// <summary>The first recording is done, its tables are written aside; the second never ends.</summary>
    [SkippableFact]
    public void TablesOfManyRecordings()
    {
        var json = Path.Combine(Folder, "result.json");
        using var command = new Interrupted("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "-", "--parquet", Folder, "--json", json);
        command.Until(() => Directory.GetFiles(Folder, "*.part").Length == 6);
        Assert.Equal(Cancelled, command.Stop());
        Assert.Equal([Path.Combine(Folder, "result-trace.json")], Directory.GetFiles(Folder));
    }

    [SkippableFact]
    public void WhileALargeFileIsWritten()
    {
        var scenario = Path.Combine(Folder, "long.json");
        File.WriteAllText(scenario, """{ "scenario": 1, "rate": "1 kHz", "duration": "1000 s", "axes": { "x": { "motion": "linear", "steps": [ { "step": "hold", "for": "1 s" } ] } } }""");
        using var command = new Interrupted("synth", scenario, "-o", Path.Combine(Folder, "long.csv"));
        command.Until(() => Directory.GetFiles(Folder, "*.part") is [var part] && new FileInfo(part).Length > 0);
        Assert.Equal(Cancelled, command.Stop());
        Assert.Equal([scenario], Directory.GetFiles(Folder));
    }

    private string Named(string argument) => argument switch
    {
        "OUT" => Path.Combine(Folder, "out"),
        "PLAN" => Demo("bridge-gate-speed", "plan.json"),
        "TRACE" => Demo("bridge-gate-speed", "trace.csv"),
        _ => argument,
    };
}
