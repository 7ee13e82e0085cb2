using System.Text.Json;
using System.Xml.Linq;
using MonitorSim.Cli;

namespace MonitorSim.Tests.Cli;

public sealed class CommandLineTests : CommandTest
{
    [Fact]
    public void AReplayThatTripsExitsWith1AndWritesItsResult()
    {
        var json = Path.Combine(Folder, "result.json");
        Assert.Equal(1, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", json, "--csv", Folder));
        using var result = JsonDocument.Parse(File.ReadAllText(json));
        Assert.Equal("tripped", result.RootElement.GetProperty("verdict").GetString());
        Assert.Equal(0.908m, result.RootElement.GetProperty("trips")[0].GetProperty("time").GetDecimal());
        Assert.Contains("115.74 mm/s", Out.ToString());
        Assert.StartsWith("axis,monitor,function", File.ReadAllText(Path.Combine(Folder, "trips.csv")));
        Assert.DoesNotContain(Directory.GetFiles(Folder), file => file.EndsWith(".part", StringComparison.Ordinal));
    }

    [Fact]
    public void ACleanReplayExitsWith0() =>
        Assert.Equal(0, Run("replay", Demo("bridge-stop-good", "plan.json"), Demo("bridge-stop-good", "trace.csv"), "--quiet"));

    [Fact]
    public void FaultsCanBeInjected()
    {
        Assert.Equal(1, Run("replay", Demo("bridge-simulated", "plan.json"), Demo("bridge-simulated", "trace.csv"), "--csv", Folder, "--quiet"));
        var simulated = File.ReadAllLines(Path.Combine(Folder, "simulated.csv"));
        Assert.Equal("axis,time_s,position,velocity,acceleration,torque", simulated[0]);
        Assert.StartsWith("bridge,0.93,", simulated[1]);
        Assert.StartsWith("bridge,2,", simulated[^1]);
        Assert.Equal(1, Run("explain", Demo("bridge-simulated", "plan.json"), Demo("bridge-simulated", "trace.csv"), "--fault", "bridge.velocity scaled factor 0.1"));
        Assert.Contains("end of travel (SLP) trips", Out.ToString());
        Assert.Contains("Note: injected, not recorded: bridge.velocity scaled factor 0.1.", Out.ToString());
    }

    [Fact]
    public void AllFaultsThatAreNoneAreErrors()
    {
        Assert.Equal(2, Run("replay", Demo("bridge-simulated", "plan.json"), Demo("bridge-simulated", "trace.csv"), "--fault", "bridge runway", "--fault", "bridge stuck"));
        Assert.Equal(2, Error.ToString().TrimEnd().Split('\n').Length);
    }

    [Fact]
    public void JsonOnStandardOutputIsAlone()
    {
        Assert.Equal(1, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", "-"));
        Assert.Equal("", Out.ToString());
        using var result = JsonDocument.Parse(Bytes.ToArray());
        Assert.Equal(1, result.RootElement.GetProperty("result").GetInt32());
    }

    [Theory]
    [InlineData("replay", 1, "What happened")]
    [InlineData("tune", 0, "What the recordings need")]
    public void AReportIsOnePageOfAllRecordings(string command, int exit, string part)
    {
        var (report, second) = (Path.Combine(Folder, "new", "report.html"), Path.Combine(Folder, "shorter.csv"));
        File.WriteAllLines(second, File.ReadAllLines(Demo("bridge-gate-speed", "trace.csv"))[..^1]);
        Assert.Equal(exit, Run(command, Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), second, "--report", report));
        var page = File.ReadAllText(report);
        Assert.StartsWith("<!DOCTYPE html>", page);
        Assert.EndsWith("</html>", page.TrimEnd());
        Assert.Contains(part, page);
        Assert.Equal([report], Directory.GetFiles(Path.GetDirectoryName(report)!));
        Assert.Equal(exit, Run(command, Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), second, "--report", "-"));
        Assert.Equal(File.ReadAllBytes(report), Bytes.ToArray()[..^1]);
    }

    [Fact]
    public void EveryProblemIsOneLineOnStandardError()
    {
        var plan = Path.Combine(Folder, "plan.json");
        File.WriteAllText(plan, """{ "plan": 1, "axes": { "bridge": { "motion": "linear", "speed": 3, "stops": {} } } }""");
        Assert.Equal(2, Run("replay", plan, Demo("bridge-gate-speed", "trace.csv")));
        var lines = Error.ToString().TrimEnd().Split('\n');
        Assert.True(lines.Length >= 2, Error.ToString());
        Assert.All(lines, line => Assert.StartsWith($"{plan}(1,", line));
    }

    /// <summary>A name cannot break a message in two, nor command the terminal.</summary>
    [Fact]
    public void NamesWithControlCharactersStayInTheirLine()
    {
        var plan = Path.Combine(Folder, "plan.json");
        File.WriteAllText(plan, File.ReadAllText(Demo("bridge-gate-speed", "plan.json")).Replace("\"bridge\"", "\"a\\n\\u001b[31mb\"", StringComparison.Ordinal));
        Assert.Equal(1, Run("replay", plan, Demo("bridge-gate-speed", "trace.csv")));
        Assert.Equal(1, Run("explain", plan, Demo("bridge-gate-speed", "trace.csv")));
        File.WriteAllText(plan, "{ \"plan\": 1, \"x\\ny\\u001b\": 3, \"axes\": {} }");
        Assert.Equal(2, Run("check", plan, Demo("bridge-gate-speed", "trace.csv")));
        Assert.DoesNotContain('\u001b', Out.ToString() + Error);
        Assert.Contains(@"a\n\u001b[31mb", Out.ToString(), StringComparison.Ordinal);
        Assert.StartsWith($@"{plan}(1,14): unknown key 'x\ny\u001b'; ", Error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void RecordingsOfOneNameKeepAFileEach()
    {
        foreach (var day in new[] { "monday", "tuesday" })
            File.Copy(Demo("bridge-gate-speed", "trace.csv"), Path.Combine(Directory.CreateDirectory(Path.Combine(Folder, day)).FullName, "run.csv"));
        Assert.Equal(1, Run("replay", Demo("bridge-gate-speed", "plan.json"), Path.Combine(Folder, "monday", "run.csv"), Path.Combine(Folder, "tuesday", "run.csv"),
            "--json", Path.Combine(Folder, "out.json"), "--csv", Path.Combine(Folder, "tables"), "--quiet"));
        Assert.Equal(["out-run-2.json", "out-run.json"], Directory.GetFiles(Folder, "*.json").Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(2, Directory.GetDirectories(Path.Combine(Folder, "tables")).Length);
    }

    [Theory]
    [InlineData("describe")]
    [InlineData("explain")]
    [InlineData("replay")]
    [InlineData("check")]
    [InlineData("tune")]
    public void QuietSaysNothing(string command)
    {
        string[] plan = command == "describe" ? [] : [Demo("bridge-gate-speed", "plan.json")];
        Assert.InRange(Run([command, .. plan, Demo("bridge-gate-speed", "trace.csv"), "--quiet", "--no-color"]), 0, 1);
        Assert.Equal("", Out.ToString());
        Assert.Equal("", Error.ToString());
    }

    [Theory]
    [InlineData("replay")]
    [InlineData("check")]
    [InlineData("tune")]
    public void ResultsStandBesideTheirCaution(string command)
    {
        Run(command, Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"));
        Assert.Contains(Cautions.Text, Out.ToString().ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal));
    }

    [Fact]
    public void AnEmptyPathIsAMessage()
    {
        Assert.Equal(2, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", "", "--quiet"));
        Assert.Contains("name a file", Error.ToString());
    }

    [Fact]
    public void ControlCharactersDoNotStopJUnit()
    {
        var (plan, junit) = (Path.Combine(Folder, "plan.json"), Path.Combine(Folder, "check.xml"));
        File.WriteAllText(plan, File.ReadAllText(Demo("bridge-gate-speed", "plan.json")).Replace("Slab saw", "Slab\\u0001saw", StringComparison.Ordinal));
        Assert.Equal(0, Run("check", plan, Demo("bridge-gate-speed", "trace.csv"), "--junit", junit, "--quiet"));
        Assert.StartsWith("Slab\uFFFDsaw", XDocument.Load(junit).Descendants("testcase").First().Attribute("classname")!.Value);
    }

    [Theory]
    [InlineData("replay")]
    [InlineData("replay", "plan.json", "trace.csv", "--nonsense")]
    [InlineData("nonsense")]
    [InlineData("schema", "nonsense")]
    [InlineData("synth", "no such scenario.json", "-o", "-")]
    [InlineData("synth", "scenario.json")]
    [InlineData("explain", "no such plan.json", "no such trace.csv")]
    public void WhatCannotBeDoneExitsWith2AndSaysWhy(params string[] args)
    {
        Assert.Equal(2, Run(args));
        Assert.NotEqual("", Error.ToString());
        Assert.DoesNotContain('\t', Error.ToString());
    }

    [Fact]
    public void CheckHoldsThePlansExpectations()
    {
        var junit = Path.Combine(Folder, "check.xml");
        Assert.Equal(0, Run("check", Demo("lift-standstill", "plan.json"), Demo("lift-standstill", "trace.csv"), "--junit", junit));
        Assert.Equal("0", XDocument.Load(junit).Descendants("testsuite").Single().Attribute("failures")!.Value);
        Assert.Equal(1, Run("check", Demo("lift-standstill", "plan.json"), Failing("lift-standstill"), "--junit", junit));
        Assert.Equal("1", XDocument.Load(junit).Descendants("testsuite").Single().Attribute("failures")!.Value);
    }

    [Fact]
    public void DescribeStartsAPlanThatCanBeRead()
    {
        var plan = Path.Combine(Folder, "start.json");
        Assert.Equal(0, Run("describe", Demo("bridge-gate-speed", "trace.csv"), "--write", plan));
        Assert.Contains("1001 samples", Out.ToString());
        Assert.Equal(0, Run("replay", plan, Demo("bridge-gate-speed", "trace.csv"), "--quiet"));
    }

    [Fact]
    public void DescribeStartsFromWhatWasMeasured()
    {
        var recording = Path.Combine(Folder, "arm.csv");
        File.WriteAllText(recording, "t_s,a1_ref_pos_deg,a1_act_pos_deg,a2_act_vel_deg_per_s,brake\n0,1,2,0,0\n0.1,1,2.5,0,1\n");
        var plan = Path.Combine(Folder, "start.json");
        Assert.Equal(0, Run("describe", recording, "--write", plan));
        var start = MonitorSim.Plans.PlanReader.Read(plan);
        Assert.Equal("a1_act_pos_deg", start.Axes["axis"].Channels.Position!.Column);
        Assert.Equal(["brake"], start.Signals.Keys);
    }

    [Fact]
    public void ExplainTellsTheStory()
    {
        Assert.Equal(1, Run("explain", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv")));
        Assert.Contains("Its request, gateOpen, came at 0.5 s; after its delay of 400 ms it has watched since 0.9 s.", Out.ToString());
        Assert.Contains("above the limit of 33 mm/s since 0.9 s, for 8 ms", Out.ToString());
        Assert.Contains("a filter above 174 ms", Out.ToString());
    }

    [Fact]
    public void SchemaIsJson()
    {
        foreach (var which in new[] { "plan", "scenario", "result" })
        {
            Assert.Equal(0, Run("schema", which, "--quiet", "--no-color"));
            using var schema = JsonDocument.Parse(Out.ToString());
            Assert.Equal("MonitorSim " + which, schema.RootElement.GetProperty("title").GetString());
            Out.GetStringBuilder().Clear();
        }
    }

    [Fact]
    public void DemoDrawsEveryCase()
    {
        Assert.Equal(0, Run("demo", Folder));
        var cases = Directory.GetDirectories(Path.Combine(AppContext.BaseDirectory, "traces"));
        Assert.True(cases.Length >= 5);
        foreach (var name in cases.Select(Path.GetFileName))
        {
            var files = Directory.GetFiles(Path.Combine(Folder, name!));
            Assert.Contains(files, file => file.EndsWith(".png", StringComparison.Ordinal));
            Assert.Contains(files, file => file.EndsWith("story.txt", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@cmd", "'@cmd")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData(-1.5, "-1.5")]
    public void CsvCellsCarryNoFormulas(object value, string expected) => Assert.Equal(expected, SheetCsv.Cell(value));
}
