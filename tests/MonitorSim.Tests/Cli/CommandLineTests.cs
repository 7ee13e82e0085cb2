using System.Text.Json;
using System.Xml.Linq;
using MonitorSim.Cli;

namespace MonitorSim.Tests.Cli;

public sealed class CommandLineTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("monitorsim").FullName;
    private readonly StringWriter _out = new(), _error = new();
    private readonly MemoryStream _bytes = new();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void AReplayThatTripsExitsWith1AndWritesItsResult()
    {
        var json = Path.Combine(_folder, "result.json");
        Assert.Equal(1, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", json, "--csv", _folder));
        using var result = JsonDocument.Parse(File.ReadAllText(json));
        Assert.Equal("tripped", result.RootElement.GetProperty("verdict").GetString());
        Assert.Equal(0.908m, result.RootElement.GetProperty("trips")[0].GetProperty("time").GetDecimal());
        Assert.Contains("115.74 mm/s", _out.ToString());
        Assert.StartsWith("axis,monitor,function", File.ReadAllText(Path.Combine(_folder, "trips.csv")));
        Assert.DoesNotContain(Directory.GetFiles(_folder), file => file.EndsWith(".part", StringComparison.Ordinal));
    }

    [Fact]
    public void ACleanReplayExitsWith0() =>
        Assert.Equal(0, Run("replay", Demo("bridge-stop-good", "plan.json"), Demo("bridge-stop-good", "trace.csv"), "--quiet"));

    [Fact]
    public void FaultsCanBeInjected()
    {
        Assert.Equal(1, Run("replay", Demo("bridge-simulated", "plan.json"), Demo("bridge-simulated", "trace.csv"), "--csv", _folder, "--quiet"));
        var simulated = File.ReadAllLines(Path.Combine(_folder, "simulated.csv"));
        Assert.Equal("axis,time_s,position,velocity,acceleration,torque", simulated[0]);
        Assert.StartsWith("bridge,0.93,", simulated[1]);
        Assert.StartsWith("bridge,2,", simulated[^1]);
        Assert.Equal(1, Run("explain", Demo("bridge-simulated", "plan.json"), Demo("bridge-simulated", "trace.csv"), "--fault", "bridge.velocity scaled factor 0.1"));
        Assert.Contains("end of travel (SLP) trips", _out.ToString());
        Assert.Contains("Note: injected, not recorded: bridge.velocity scaled factor 0.1.", _out.ToString());
    }

    [Fact]
    public void AllFaultsThatAreNoneAreErrors()
    {
        Assert.Equal(2, Run("replay", Demo("bridge-simulated", "plan.json"), Demo("bridge-simulated", "trace.csv"), "--fault", "bridge runway", "--fault", "bridge stuck"));
        Assert.Equal(2, _error.ToString().TrimEnd().Split('\n').Length);
    }

    [Fact]
    public void JsonOnStandardOutputIsAlone()
    {
        Assert.Equal(1, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", "-"));
        Assert.Equal("", _out.ToString());
        using var result = JsonDocument.Parse(_bytes.ToArray());
        Assert.Equal(1, result.RootElement.GetProperty("result").GetInt32());
    }

    [Theory]
    [InlineData("replay", 1, "What happened")]
    [InlineData("tune", 0, "What the recordings need")]
    public void AReportIsOnePageOfAllRecordings(string command, int exit, string part)
    {
        var (report, second) = (Path.Combine(_folder, "new", "report.html"), Path.Combine(_folder, "shorter.csv"));
        File.WriteAllLines(second, File.ReadAllLines(Demo("bridge-gate-speed", "trace.csv"))[..^1]);
        Assert.Equal(exit, Run(command, Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), second, "--report", report));
        var page = File.ReadAllText(report);
        Assert.StartsWith("<!DOCTYPE html>", page);
        Assert.EndsWith("</html>", page.TrimEnd());
        Assert.Contains(part, page);
        Assert.Equal([report], Directory.GetFiles(Path.GetDirectoryName(report)!));
        Assert.Equal(exit, Run(command, Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), second, "--report", "-"));
        Assert.Equal(File.ReadAllBytes(report), _bytes.ToArray()[..^1]);
    }

    [Fact]
    public void EveryProblemIsOneLineOnStandardError()
    {
        var plan = Path.Combine(_folder, "plan.json");
        File.WriteAllText(plan, """{ "plan": 1, "axes": { "bridge": { "motion": "linear", "speed": 3, "stops": {} } } }""");
        Assert.Equal(2, Run("replay", plan, Demo("bridge-gate-speed", "trace.csv")));
        var lines = _error.ToString().TrimEnd().Split('\n');
        Assert.True(lines.Length >= 2, _error.ToString());
        Assert.All(lines, line => Assert.StartsWith($"{plan}(1,", line));
    }

    [Fact]
    public void RecordingsOfOneNameKeepAFileEach()
    {
        foreach (var day in new[] { "monday", "tuesday" })
            File.Copy(Demo("bridge-gate-speed", "trace.csv"), Path.Combine(Directory.CreateDirectory(Path.Combine(_folder, day)).FullName, "run.csv"));
        Assert.Equal(1, Run("replay", Demo("bridge-gate-speed", "plan.json"), Path.Combine(_folder, "monday", "run.csv"), Path.Combine(_folder, "tuesday", "run.csv"),
            "--json", Path.Combine(_folder, "out.json"), "--csv", Path.Combine(_folder, "tables"), "--quiet"));
        Assert.Equal(["out-run-2.json", "out-run.json"], Directory.GetFiles(_folder, "*.json").Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(2, Directory.GetDirectories(Path.Combine(_folder, "tables")).Length);
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
        Assert.Equal("", _out.ToString());
        Assert.Equal("", _error.ToString());
    }

    [Theory]
    [InlineData("replay")]
    [InlineData("check")]
    [InlineData("tune")]
    public void ResultsStandBesideTheirCaution(string command)
    {
        Run(command, Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"));
        Assert.Contains("no safety component", _out.ToString().ReplaceLineEndings(" "));
    }

    [Fact]
    public void AnEmptyPathIsAMessage()
    {
        Assert.Equal(2, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", "", "--quiet"));
        Assert.Contains("name a file", _error.ToString());
    }

    [Fact]
    public void ControlCharactersDoNotStopJUnit()
    {
        var (plan, junit) = (Path.Combine(_folder, "plan.json"), Path.Combine(_folder, "check.xml"));
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
        Assert.NotEqual("", _error.ToString());
        Assert.DoesNotContain('\t', _error.ToString());
    }

    [Fact]
    public void CheckHoldsThePlansExpectations()
    {
        var junit = Path.Combine(_folder, "check.xml");
        Assert.Equal(0, Run("check", Demo("lift-standstill", "plan.json"), Demo("lift-standstill", "trace.csv"), "--junit", junit));
        Assert.Equal("0", XDocument.Load(junit).Descendants("testsuite").Single().Attribute("failures")!.Value);
        Assert.Equal(1, Run("check", Demo("lift-standstill", "plan.json"), Failing("lift-standstill"), "--junit", junit));
        Assert.Equal("1", XDocument.Load(junit).Descendants("testsuite").Single().Attribute("failures")!.Value);
    }

    [Fact]
    public void DescribeStartsAPlanThatCanBeRead()
    {
        var plan = Path.Combine(_folder, "start.json");
        Assert.Equal(0, Run("describe", Demo("bridge-gate-speed", "trace.csv"), "--write", plan));
        Assert.Contains("1001 samples", _out.ToString());
        Assert.Equal(0, Run("replay", plan, Demo("bridge-gate-speed", "trace.csv"), "--quiet"));
    }

    [Fact]
    public void DescribeStartsFromWhatWasMeasured()
    {
        var recording = Path.Combine(_folder, "arm.csv");
        File.WriteAllText(recording, "t_s,a1_ref_pos_deg,a1_act_pos_deg,a2_act_vel_deg_per_s,brake\n0,1,2,0,0\n0.1,1,2.5,0,1\n");
        var plan = Path.Combine(_folder, "start.json");
        Assert.Equal(0, Run("describe", recording, "--write", plan));
        var start = MonitorSim.Plans.PlanReader.Read(plan);
        Assert.Equal("a1_act_pos_deg", start.Axes["axis"].Channels.Position!.Column);
        Assert.Equal(["brake"], start.Signals.Keys);
    }

    [Fact]
    public void ExplainTellsTheStory()
    {
        Assert.Equal(1, Run("explain", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv")));
        Assert.Contains("Its request, gateOpen, came at 0.5 s; after its delay of 400 ms it has watched since 0.9 s.", _out.ToString());
        Assert.Contains("above the limit of 33 mm/s since 0.9 s, for 8 ms", _out.ToString());
        Assert.Contains("a filter above 174 ms", _out.ToString());
    }

    [Fact]
    public void TuneWritesFrontiers()
    {
        Assert.Equal(0, Run("tune", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", "-"));
        using var result = JsonDocument.Parse(_bytes.ToArray());
        Assert.Equal(0.11574, result.RootElement.GetProperty("monitors")[0].GetProperty("critical").GetDouble(), 1e-12);
    }

    [Fact]
    public void TunedPartsJoinToTheWhole()
    {
        var (plan, a, b) = (Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), Failing("bridge-gate-speed"));
        string At(string name) => Path.Combine(_folder, name);
        Assert.Equal(0, Run("tune", plan, a, "--json", At("a.json"), "--quiet"));
        Assert.Equal(0, Run("tune", plan, b, "--json", At("b.json"), "--quiet"));
        Assert.Equal(0, Run("tune", plan, b, a, "--json", At("whole.json"), "--csv", _folder, "--quiet"));
        Assert.Equal(0, Run("tune", "--join", At("b.json"), At("a.json"), "--json", "-"));
        Assert.Equal("", _out.ToString());
        Assert.Equal(File.ReadAllBytes(At("whole.json")), _bytes.ToArray()[..^1]);
        Assert.StartsWith("axis,monitor,function,side", File.ReadAllText(At("limits.csv")));
        Assert.StartsWith("axis,monitor,side", File.ReadAllText(At("frontier.csv")));
        Assert.Equal(2, Run("tune", "--join", At("a.json"), At("whole.json")));
        Assert.StartsWith($"{At("whole.json")}: the recording {a} has the same content as", _error.ToString());
    }

    [Fact]
    public void TuneFinishesTheOthersWhereOneRecordingIsBad()
    {
        Assert.Equal(2, Run("tune", Demo("bridge-gate-speed", "plan.json"), "no such trace.csv", Demo("bridge-gate-speed", "trace.csv")));
        Assert.StartsWith("no such trace.csv: there is no such file", _error.ToString());
        Assert.Contains("set-up speed", _out.ToString());
    }

    /// <summary>A margin and a hazard on the command line give the room, and what is wrong with them is said before any file is read.</summary>
    [Fact]
    public void TuneSaysWhetherThereIsRoom()
    {
        string[] tune = ["tune", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv")];
        Assert.Equal(0, Run([.. tune, "--margin", "10 %", "--deceleration", "1.5 m/s²", "--overrun", "5 mm", "--approach-speed", "63 in/s", "--inertia", "180 kg"]));
        Assert.Contains("bridge.set-up speed, upper: production needs", _out.ToString());
        Assert.Contains("as its overrun decides", _out.ToString().ReplaceLineEndings(" "));
        Assert.Contains("S = K·T + C", _out.ToString().ReplaceLineEndings(" "));
        Assert.Equal(0, Run([.. tune, "--deceleration", "1.5 m/s²", "--overrun", "5 mm", "--json", "-"]));
        using var json = JsonDocument.Parse(_bytes.ToArray());
        var room = json.RootElement.GetProperty("monitors")[0].GetProperty("room");
        Assert.True(room.GetProperty("to").GetDouble() > 0);
        Assert.Equal(5, room.GetProperty("levers").GetArrayLength());
    }

    /// <summary>With --plant the stop of each limit's reaction is simulated and the fault is a runaway: (6000 + 2354 - 180) N on 240 kg are 34.06 m/s².</summary>
    [Fact]
    public void TuneAsksThePlant()
    {
        Assert.Equal(0, Run("tune", Demo("lift-runaway", "plan.json"), Demo("lift-runaway", "trace.csv"), "--plant", "--overrun", "200 mm", "--json", Path.Combine(_folder, "tuned.json")));
        var said = string.Join(' ', _out.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("stopping as its plant does", said);
        Assert.Contains("after a fault of 34058 mm/s²; overrun", said);
        Assert.Contains("the load drives it on to", said);
        using var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(_folder, "tuned.json")));
        var room = json.RootElement.GetProperty("monitors")[1].GetProperty("room");
        Assert.Equal("overrun", room.GetProperty("decidedBy").GetString());
        Assert.DoesNotContain(room.GetProperty("levers").EnumerateArray(), lever => lever.GetProperty("lever").GetString() == "deceleration");
    }

    /// <summary>A stop that never ends, torque off without friction, has no room and no numbers, in JSON too.</summary>
    [Fact]
    public void TuneSaysThatAStopNeverEnds()
    {
        var (plan, run) = (Path.Combine(_folder, "plan.json"), Path.Combine(_folder, "run.csv"));
        File.WriteAllText(plan, """
            { "plan": 1, "title": "sledge", "axes": { "x": { "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "mm/s" } },
              "plant": { "mass": "10 kg", "limit": "100 N" }, "monitors": [ { "name": "speed", "function": "SLS", "limit": "60 mm/s", "reaction": "stop 0" } ] } } }
            """);
        File.WriteAllLines(run, ["t_s,v", "0,1", "0.001,2", "0.002,1"]);
        Assert.Equal(0, Run("tune", plan, run, "--plant", "--overrun", "10 mm", "--json", Path.Combine(_folder, "tuned.json"), "--plot", _folder));
        Assert.Contains("NO ROOM", _out.ToString());
        using var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(_folder, "tuned.json")));
        var present = json.RootElement.GetProperty("monitors")[0].GetProperty("room").GetProperty("present");
        Assert.Equal(JsonValueKind.Null, present.GetProperty("stopping").ValueKind);
        Assert.Equal(JsonValueKind.Null, present.GetProperty("overrun").ValueKind);
    }

    /// <summary>Twelve runs, each a little faster than the one before: their drift is said beside the bounds; over all phases of a cycle of 7 ms the worst is named.</summary>
    [Fact]
    public void TuneSaysThatRunsDriftAndWhatTheWorstPhaseNeeds()
    {
        var plan = Path.Combine(_folder, "plan.json");
        File.WriteAllText(plan, """
            { "plan": 1, "title": "drift", "cycle": "7 ms", "phase": "3 ms", "axes": { "x": { "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "mm/s" } },
              "monitors": [ { "name": "speed", "function": "SLS", "limit": "60 mm/s", "reaction": "stop 0" } ] } } }
            """);
        var runs = Enumerable.Range(10, 12).Select(run => Path.Combine(_folder, $"run{run}.csv")).ToList();
        foreach (var (run, k) in runs.Select((run, k) => (run, k)))
            File.WriteAllLines(run, ["t_s,v", .. Enumerable.Range(0, 20).Select(n => FormattableString.Invariant($"{n * 0.002m},{(n == 5 ? 50 + k : 20)}"))]);
        Assert.Equal(0, Run(["tune", plan, .. runs, "--phases", "--csv", _folder, "--plot", _folder]));
        var said = string.Join(' ', _out.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("CAUTION: in the order of their names, what runs need drifts", said);
        Assert.Contains("x.speed, upper (rises, Kendall's tau 1.00)", said);
        Assert.Contains("| x.speed | upper | 60 mm/s | 61 mm/s | run21.csv | 0.003 s | 20 mm/s | 0 s |", said);
        Assert.Contains("| x.speed | run21.csv | 0.01 s | 0.003 s | 0.011999999 s | 0.004999999 s | 0 s: chance decides |", said);
        Assert.Equal(13, File.ReadAllLines(Path.Combine(_folder, "phase-limits.csv")).Length);
        Assert.True(File.Exists(Path.Combine(_folder, "x-speed-upper-runs.png")));
    }

    [Theory]
    [InlineData("--overrun: '2 s' is no length", "--deceleration", "1 m/s²", "--overrun", "2 s")]
    [InlineData("--overrun: '2 mm' is no angle", "--deceleration", "1 deg/s²", "--overrun", "2 mm")]
    [InlineData("--deceleration: without it", "--overrun", "2 mm")]
    [InlineData("--plant: no axis with a plant", "--plant", "--overrun", "2 mm")]
    [InlineData("--plant: --deceleration says already", "--plant", "--deceleration", "1 m/s²")]
    [InlineData("--deceleration: '0 m/s²' is too small", "--deceleration", "0 m/s²", "--overrun", "2 mm")]
    [InlineData("--approach-speed: a distance takes K", "--deceleration", "1 m/s²", "--distance", "2 m")]
    [InlineData("--inertia: an energy takes what moves", "--deceleration", "1 m/s²", "--energy", "2 J")]
    [InlineData("--margin: 'ten %' is no share", "--margin", "ten %")]
    [InlineData("--margin: '-1 mm/s' is negative", "--margin", "-1 mm/s")]
    [InlineData("--need: 'most' is no basis", "--need", "most")]
    [InlineData("--coverage is a share between 0 and 1", "--coverage", "1")]
    [InlineData("--for: no limit is concerned", "--deceleration", "1 m/s²", "--for", "nowhere")]
    [InlineData("cycle: monitors run once a sample", "--phases")]
    public void TuneTeachesItsOptions(string message, params string[] options)
    {
        Assert.Equal(2, Run(["tune", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--quiet", .. options]));
        Assert.StartsWith(message, _error.ToString());
    }

    [Theory]
    [InlineData("tune")]
    [InlineData("tune", "plan.json")]
    [InlineData("tune", "plan.json", "trace.csv", "--join", "a.json")]
    public void TuneSaysWhatItTakes(params string[] args)
    {
        Assert.Equal(2, Run(args));
        Assert.Contains("--join", _error.ToString());
    }

    [Fact]
    public void SchemaIsJson()
    {
        foreach (var which in new[] { "plan", "scenario", "result" })
        {
            Assert.Equal(0, Run("schema", which, "--quiet", "--no-color"));
            using var schema = JsonDocument.Parse(_out.ToString());
            Assert.Equal("MonitorSim " + which, schema.RootElement.GetProperty("title").GetString());
            _out.GetStringBuilder().Clear();
        }
    }

    [Fact]
    public void DemoDrawsEveryCase()
    {
        Assert.Equal(0, Run("demo", _folder));
        var cases = Directory.GetDirectories(Path.Combine(AppContext.BaseDirectory, "traces"));
        Assert.True(cases.Length >= 5);
        foreach (var name in cases.Select(Path.GetFileName))
        {
            var files = Directory.GetFiles(Path.Combine(_folder, name!));
            Assert.Contains(files, file => file.EndsWith(".png", StringComparison.Ordinal));
            Assert.Contains(files, file => file.EndsWith("story.txt", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@cmd", "'@cmd")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData(-1.5, "-1.5")]
    public void CsvCellsCarryNoFormulas(object value, string expected) => Assert.Equal(expected, ResultCsv.Cell(value));

    private int Run(params string[] args) => CommandLine.Run(args, new Terminal(_out, _error, () => _bytes));

    private static string Demo(string name, string file) => Path.Combine(AppContext.BaseDirectory, "traces", name, file);

    /// <summary>The same recording with a lift that does not sink.</summary>
    private string Failing(string name)
    {
        var path = Path.Combine(_folder, "still.csv");
        var lines = File.ReadAllLines(Demo(name, "trace.csv"));
        File.WriteAllLines(path, lines.Take(700));
        return path;
    }
}
