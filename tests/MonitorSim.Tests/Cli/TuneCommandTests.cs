using System.Text.Json;
using MonitorSim.Cli;

namespace MonitorSim.Tests.Cli;

/// <summary><c>tune</c>, as its user runs it.</summary>
public sealed class TuneCommandTests : CommandTest
{
    [Fact]
    public void TuneWritesFrontiers()
    {
        Assert.Equal(0, Run("tune", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", "-"));
        using var result = JsonDocument.Parse(Bytes.ToArray());
        Assert.Equal(0.11574, result.RootElement.GetProperty("monitors")[0].GetProperty("critical").GetDouble(), 1e-12);
    }

    [Fact]
    public void TunedPartsJoinToTheWhole()
    {
        var (plan, a, b) = (Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), Failing("bridge-gate-speed"));
        string At(string name) => Path.Combine(Folder, name);
        Assert.Equal(0, Run("tune", plan, a, "--json", At("a.json"), "--quiet"));
        Assert.Equal(0, Run("tune", plan, b, "--json", At("b.json"), "--quiet"));
        Assert.Equal(0, Run("tune", plan, b, a, "--json", At("whole.json"), "--csv", Folder, "--quiet"));
        Assert.Equal(0, Run("tune", "--join", At("b.json"), At("a.json"), "--json", "-"));
        Assert.Equal("", Out.ToString());
        Assert.Equal(File.ReadAllBytes(At("whole.json")), Bytes.ToArray()[..^1]);
        Assert.StartsWith("axis,monitor,function,side", File.ReadAllText(At("limits.csv")));
        Assert.StartsWith("axis,monitor,side", File.ReadAllText(At("frontier.csv")));
        Assert.Equal(2, Run("tune", "--join", At("a.json"), At("whole.json")));
        Assert.StartsWith($"{At("whole.json")}: the recording {a} has the same content as", Error.ToString());
    }

    [Fact]
    public void TuneFinishesTheOthersWhereOneRecordingIsBad()
    {
        Assert.Equal(2, Run("tune", Demo("bridge-gate-speed", "plan.json"), "no such trace.csv", Demo("bridge-gate-speed", "trace.csv")));
        Assert.StartsWith("no such trace.csv: there is no such file", Error.ToString());
        Assert.Contains("set-up speed", Out.ToString());
    }

    /// <summary>A margin and a hazard on the command line give the room, and what is wrong with them is said before any file is read.</summary>
    [Fact]
    public void TuneSaysWhetherThereIsRoom()
    {
        string[] tune = ["tune", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv")];
        Assert.Equal(0, Run([.. tune, "--margin", "10 %", "--deceleration", "1.5 m/s²", "--overrun", "5 mm", "--approach-speed", "63 in/s", "--inertia", "180 kg"]));
        Assert.Contains("bridge.set-up speed, upper: production needs", Out.ToString());
        Assert.Contains("as its overrun decides", Out.ToString().ReplaceLineEndings(" "));
        Assert.Contains("S = K·T + C", Out.ToString().ReplaceLineEndings(" "));
        Assert.Equal(0, Run([.. tune, "--deceleration", "1.5 m/s²", "--overrun", "5 mm", "--json", "-"]));
        using var json = JsonDocument.Parse(Bytes.ToArray());
        var room = json.RootElement.GetProperty("monitors")[0].GetProperty("room");
        Assert.True(room.GetProperty("to").GetDouble() > 0);
        Assert.Equal(5, room.GetProperty("levers").GetArrayLength());
    }

    /// <summary>With --plant the stop of each limit's reaction is simulated and the fault is a runaway: (6000 + 2354 - 180) N on 240 kg are 34.06 m/s².</summary>
    [Fact]
    public void TuneAsksThePlant()
    {
        Assert.Equal(0, Run("tune", Demo("lift-runaway", "plan.json"), Demo("lift-runaway", "trace.csv"), "--plant", "--overrun", "200 mm", "--json", Path.Combine(Folder, "tuned.json")));
        var said = string.Join(' ', Out.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("stopping as its plant does", said);
        Assert.Contains("after a fault of 34058 mm/s²; overrun", said);
        Assert.Contains("the load drives it on to", said);
        using var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, "tuned.json")));
        var room = json.RootElement.GetProperty("monitors")[1].GetProperty("room");
        Assert.Equal("overrun", room.GetProperty("decidedBy").GetString());
        Assert.DoesNotContain(room.GetProperty("levers").EnumerateArray(), lever => lever.GetProperty("lever").GetString() == "deceleration");
    }

    /// <summary>A stop that never ends, torque off without friction, has no room and no numbers, in JSON too.</summary>
    [Fact]
    public void TuneSaysThatAStopNeverEnds()
    {
        var (plan, run) = (Path.Combine(Folder, "plan.json"), Path.Combine(Folder, "run.csv"));
        File.WriteAllText(plan, """
            { "plan": 1, "title": "sledge", "axes": { "x": { "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "mm/s" } },
              "plant": { "mass": "10 kg", "limit": "100 N" }, "monitors": [ { "name": "speed", "function": "SLS", "limit": "60 mm/s", "reaction": "stop 0" } ] } } }
            """);
        File.WriteAllLines(run, ["t_s,v", "0,1", "0.001,2", "0.002,1"]);
        Assert.Equal(0, Run("tune", plan, run, "--plant", "--overrun", "10 mm", "--json", Path.Combine(Folder, "tuned.json"), "--plot", Folder));
        Assert.Contains("NO ROOM", Out.ToString());
        using var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, "tuned.json")));
        var present = json.RootElement.GetProperty("monitors")[0].GetProperty("room").GetProperty("present");
        Assert.Equal(JsonValueKind.Null, present.GetProperty("stopping").ValueKind);
        Assert.Equal(JsonValueKind.Null, present.GetProperty("overrun").ValueKind);
    }

    /// <summary>Twelve runs, each a little faster than the one before: their drift is said beside the bounds; over all phases of a cycle of 7 ms the worst is named.</summary>
    [Fact]
    public void TuneSaysThatRunsDriftAndWhatTheWorstPhaseNeeds()
    {
        var plan = Path.Combine(Folder, "plan.json");
        File.WriteAllText(plan, """
            { "plan": 1, "title": "drift", "cycle": "7 ms", "phase": "3 ms", "axes": { "x": { "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "mm/s" } },
              "monitors": [ { "name": "speed", "function": "SLS", "limit": "60 mm/s", "reaction": "stop 0" } ] } } }
            """);
        var runs = Enumerable.Range(10, 12).Select(run => Path.Combine(Folder, $"run{run}.csv")).ToList();
        foreach (var (run, k) in runs.Select((run, k) => (run, k)))
            File.WriteAllLines(run, ["t_s,v", .. Enumerable.Range(0, 20).Select(n => FormattableString.Invariant($"{n * 0.002m},{(n == 5 ? 50 + k : 20)}"))]);
        Assert.Equal(0, Run(["tune", plan, .. runs, "--phases", "--csv", Folder, "--plot", Folder]));
        var said = string.Join(' ', Out.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("CAUTION: in the order of their names, what runs need drifts", said);
        Assert.Contains("x.speed, upper (rises, Kendall's tau 1.00)", said);
        Assert.Contains("| x.speed | upper | 60 mm/s | 61 mm/s | run21.csv | 0.003 s | 20 mm/s | 0 s |", said);
        Assert.Contains("| x.speed | run21.csv | 0.01 s | 0.003 s | 0.011999999 s | 0.004999999 s | 0 s: chance decides |", said);
        Assert.Equal(13, File.ReadAllLines(Path.Combine(Folder, "phase-limits.csv")).Length);
        Assert.True(File.Exists(Path.Combine(Folder, "x-speed-upper-runs.png")));
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
        Assert.StartsWith(message, Error.ToString());
    }

    [Theory]
    [InlineData("tune")]
    [InlineData("tune", "plan.json")]
    [InlineData("tune", "plan.json", "trace.csv", "--join", "a.json")]
    public void TuneSaysWhatItTakes(params string[] args)
    {
        Assert.Equal(2, Run(args));
        Assert.Contains("--join", Error.ToString());
    }
}
