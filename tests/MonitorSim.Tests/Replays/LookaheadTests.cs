using FsCheck.Xunit;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

/// <summary>Jumping over cycles at which nothing can change gives the same bits as stepping all of them.</summary>
public class LookaheadTests
{
    /// <summary>One monitor of each kind that looks ahead in its own way, on an axis that stops and starts again.</summary>
    private const string Monitors = """
        { "name": "sls", "function": "SLS", "request": "on", "limit": "5 mm/s", "delay": "2 ms", "filter": "1 ms", "reaction": "stop 1" },
        { "name": "levels", "function": "SLS", "levels": [ { "when": "on", "limit": "3 mm/s" }, { "when": "always", "limit": "6 mm/s" } ],
          "approach": { "deceleration": "1 m/s²", "tolerance": "1 mm/s" }, "delay": "3 ms", "reaction": "none" },
        { "name": "ssr", "function": "SSR", "request": "not on", "lower": "1 mm/s", "upper": "6 mm/s", "filter": "2 ms", "reaction": "none" },
        { "name": "signed", "function": "SSR", "lower": "-6 mm/s", "upper": "5 mm/s", "signed": true, "reaction": "none" },
        { "name": "sla", "function": "SLA", "limit": "4 m/s²", "deceleration": "6 m/s²", "reaction": "stop 2" },
        { "name": "str", "function": "STR", "lower": "-5 N", "upper": "6 N", "request": "x.near", "reaction": "none" },
        { "name": "slp", "function": "SLP", "lower": "-6 mm", "upper": "6 mm", "delay": "4 ms", "reaction": "stop 0" },
        { "name": "sos", "function": "SOS", "request": "on", "window": "5 mm", "speed": "7 mm/s", "reaction": "none" },
        { "name": "sdi", "function": "SDI", "request": "on", "allow": "positive", "tolerance": "5 mm", "reference": "start", "reaction": "none" },
        { "name": "furthest", "function": "SDI", "allow": "negative", "tolerance": "9 mm", "reaction": "none" },
        { "name": "sli", "function": "SLI", "request": "on", "increment": "6 mm", "moveTime": "4 ms", "window": "3 mm", "reaction": "none" },
        { "name": "near", "function": "SCA", "ranges": [["-4 mm", "4 mm"]], "hysteresis": "1 mm", "onDelay": "1 ms", "offDelay": "2 ms" },
        { "name": "slow", "function": "SSM", "request": "not (x.state == TorqueOff)", "upper": "3 mm/s" }
        """;

    private static Plan Plan(string head) => Bench.Plan($$"""
        "motion": "linear", "standstill": "1 mm/s", "channels": { {{Bench.Channels("pvq")}} },
        "stops": { "STO": { "residual": "6 N", "grace": "3 ms" }, "SS1": { "variant": "t", "time": "3 ms" },
          "SS2": { "variant": "r", "deceleration": "1 m/s²", "tolerance": "2 mm/s" }, "SOS": { "window": "3 mm" }, "SBC": { "apply": "2 ms", "window": "4 mm" } },
        "monitors": [ {{Monitors}} ]
        """, """ "signals": { "on": { "column": "r" }, "reset": { "column": "k" } }, "acknowledge": { "signal": "reset" }, """ + head);

    [Property(MaxTest = 100)]
    public void One_cycle_a_sample(byte[] cells) => SameBits(Plan(""" "gap": "1 s", """), Recording(cells));

    [Property(MaxTest = 60)]
    public void A_cycle_of_its_own(byte[] cells) => SameBits(Plan(""" "gap": "1 s", "cycle": "3 ms", "phase": "1 ms", "inputDelay": "2 ms", """), Recording(cells));

    [Property(MaxTest = 60)]
    public void Missing_cells_and_gaps_that_trip(byte[] cells) => SameBits(Plan(""" "gap": "6 ms", "missing": "trip", """), Recording(cells, missing: 250));

    [Property(MaxTest = 30)]
    public void Missing_cells_that_are_held(byte[] cells) => SameBits(Plan(""" "gap": "1 s", "missing": "hold", """), Recording(cells, missing: 250));

    [SkippableFact]
    public void The_worked_cases()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var compared = 0;
        foreach (var folder in Directory.EnumerateDirectories(Path.Combine(SharedFolder.Cases!, "full")).Order(StringComparer.Ordinal).Where((_, i) => i % 2 == 1))
        {
            if (File.Exists(Path.Combine(folder, "refused.txt"))) continue;
            var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
            SameBits(plan, PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv")));
            compared++;
        }

        Assert.True(compared > 60, $"only {compared} cases");
    }

    private static void SameBits(Plan plan, Trace trace) => Assert.Equal(Result(plan, trace, everyCycle: true), Result(plan, trace, everyCycle: false));

    private static string Result(Plan plan, Trace trace, bool everyCycle)
    {
        var inputs = new Inputs(plan, trace);
        var engine = Replay.RunEngine(plan, inputs, default, everyCycle);
        return ResultJson.Text(new ResultBuilder(plan, inputs, engine).Build("x", null));
    }

    /// <summary>Long quiet stretches with now and then something happening, at uneven times.</summary>
    private static Trace Recording(byte[] cells, int missing = 256)
    {
        cells = [.. cells.DefaultIfEmpty((byte)0), .. cells];
        int n = cells.Length * 5;
        var times = new long[n];
        double[] p = new double[n], v = new double[n], q = new double[n], r = new double[n], k = new double[n];
        for (var s = 0; s < n; s++)
        {
            var cell = cells[s / 5];
            times[s] = s == 0 ? 0 : times[s - 1] + (cell == 77 && s % 5 == 0 ? 7 : 1 + cell % 2) * 1_000_000L;
            p[s] = cell > missing && s % 5 == 2 && s > 5 ? double.NaN : (cell & 15) - 7;
            v[s] = cell == missing && s % 5 == 3 ? double.NaN : cell / 16 - 7;
            q[s] = cell % 15 - 7;
            (r[s], k[s]) = ((cell & 3) != 0 ? 1 : 0, cell > 230 && s % 5 == 1 ? 1 : 0);
        }

        return Bench.At(times, ("p", p), ("v", v), ("q", q), ("r", r), ("k", k));
    }
}
