using System.Text.Json;

namespace MonitorSim.Tests.Cli;

/// <summary>Whatever axes, monitors and recordings are called, nothing is written outside the folder that was asked for.</summary>
public sealed class PathTests : CommandTest
{
    private string Wanted => Path.Combine(Folder, "a", "b", "out");

    [Theory]
    [InlineData("../../x")]
    [InlineData("/tmp/monitorsim-escaped")]
    [InlineData("..")]
    [InlineData("a\0b")]
    [InlineData("CON")]
    [InlineData("LONG")]
    public void PicturesOfAxesAndMonitorsOfAnyName(string name)
    {
        var plan = Path.Combine(Folder, "plan.json");
        var called = JsonSerializer.Serialize(name == "LONG" ? new string('n', 400) : name);
        File.WriteAllText(plan, File.ReadAllText(Demo("bridge-gate-speed", "plan.json")).Replace("\"bridge\"", called, StringComparison.Ordinal).Replace("\"set-up speed\"", called, StringComparison.Ordinal));
        var trace = Demo("bridge-gate-speed", "trace.csv");
        Assert.Equal(1, Run("replay", plan, trace, "--plot", Wanted, "--csv", Wanted, "--parquet", Wanted, "--json", Path.Combine(Wanted, "result.json"), "--quiet"));
        Assert.Equal(0, Run("tune", plan, trace, "--plot", Path.Combine(Wanted, "tune"), "--csv", Wanted, "--quiet"));
        Assert.Equal("", Error.ToString());
        OnlyBelowWanted("plan.json");
        Assert.Equal((1, 1), (Directory.GetFiles(Wanted, "*.png").Length, Directory.GetFiles(Path.Combine(Wanted, "tune"), "*.png").Length));
    }

    [Fact]
    public void VectorsOfAnyName()
    {
        var plan = Path.Combine(Folder, "plan.json");
        File.WriteAllText(plan, """
            { "plan": 1, "axes": { "../../x": { "motion": "linear", "channels": { "velocity": { "column": "/v", "unit": "mm/s" } }, "stops": { "STO": {}, "SS1": { "variant": "t", "time": "10 ms" } },
              "monitors": [ { "name": "../../../y", "function": "SLS", "limit": "10 mm/s" } ] } } }
            """);
        Assert.Equal(0, Run("vectors", plan, "-o", Wanted, "--quiet"));
        OnlyBelowWanted("plan.json");
        Assert.NotEmpty(Directory.GetDirectories(Wanted));
    }

    /// <summary>A column that a spreadsheet would take for a formula is said before the work.</summary>
    [Fact]
    public void VectorsWithAFormula()
    {
        var plan = Path.Combine(Folder, "plan.json");
        File.WriteAllText(plan, File.ReadAllText(Demo("bridge-gate-speed", "plan.json")).Replace("\"column\": \"gate\"", "\"column\": \"=1+1\"", StringComparison.Ordinal));
        Assert.Equal(2, Run("vectors", plan, "-o", Wanted, "--quiet"));
        Assert.StartsWith("plan: the column '=1+1' begins as a formula does", Error.ToString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Wanted));
    }

    [Fact]
    public void RecordingsOfAnyName()
    {
        string[] names = ["...csv", ".csv", "CON.csv", "run. .csv", "a=b;c.csv"];
        var source = Directory.CreateDirectory(Path.Combine(Folder, "in")).FullName;
        foreach (var name in names) File.Copy(Demo("bridge-gate-speed", "trace.csv"), Path.Combine(source, name));
        Assert.Equal(1, Run(["replay", Demo("bridge-gate-speed", "plan.json"), .. names.Select(name => Path.Combine(source, name)), "--csv", Wanted, "--plot", Wanted, "--json", Path.Combine(Wanted, "r.json"), "--quiet"]));
        OnlyBelowWanted([.. names.Select(name => Path.Combine("in", name))]);
        Assert.Equal(["CON_", "_", "_-2", "a=b;c", "run"], Directory.GetDirectories(Wanted).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(names.Length, Directory.GetFiles(Wanted, "r-*.json").Length);
    }

    private void OnlyBelowWanted(params string[] given)
    {
        var outside = Directory.GetFiles(Folder, "*", SearchOption.AllDirectories).Where(file => !file.StartsWith(Wanted + Path.DirectorySeparatorChar, StringComparison.Ordinal));
        Assert.Equal(given.Select(name => Path.Combine(Folder, name)).Order(StringComparer.Ordinal), outside.Order(StringComparer.Ordinal));
        Assert.False(File.Exists("/tmp/monitorsim-escaped.png"));
        Assert.All(Directory.GetFiles(Wanted, "*", SearchOption.AllDirectories), file => Assert.True(Path.GetFileName(file).Length < 200));
    }
}
