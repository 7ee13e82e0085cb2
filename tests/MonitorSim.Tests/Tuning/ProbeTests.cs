using FsCheck.Xunit;
using MonitorSim.Tests.Replays;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>The critical limit of one filter, found by probing, is that of the frontier of all filters, found by visiting every cycle.</summary>
public class ProbeTests
{
    private static readonly string[] Functions =
    [
        """ "function": "SLS", "limit": "5 mm/s" """,
        """ "function": "SSR", "lower": "1 mm/s", "upper": "5 mm/s" """,
        """ "function": "SSR", "lower": "-3 mm/s", "upper": "5 mm/s", "signed": true """,
        """ "function": "SLP", "lower": "-3 mm", "upper": "3 mm" """,
        """ "function": "SOS", "window": "3 mm", "speed": "2 mm/s" """,
        """ "function": "SDI", "allow": "positive", "tolerance": "3 mm", "reference": "start" """,
        """ "function": "SDI", "allow": "negative", "tolerance": "3 mm", "reference": "start" """,
        """ "function": "SLI", "increment": "3 mm" """,
        """ "function": "SLI", "increment": "3 mm", "moveTime": "9 ms", "window": "2 mm" """,
        """ "function": "SLA", "limit": "1 m/s²", "deceleration": "2 m/s²" """,
    ];

    [Property(MaxTest = 400)]
    public void Is_on_the_frontier(byte[] cells, byte filter, byte function, bool ownCycle)
    {
        var (n, at) = (cells.Length * 2, new long[cells.Length * 2]);
        if (n == 0) return;
        double[] p = new double[n], v = new double[n], r = new double[n];
        for (var k = 0; k < n; k++)
        {
            var cell = cells[k / 2];
            at[k] = k == 0 ? 0 : at[k - 1] + (1 + (cell + k) % 3) * 1_000_000L;
            (p[k], v[k], r[k]) = (cell == 9 ? double.NaN : cell % 15 - 7, cell == 10 ? double.NaN : cell / 16 - 7, cell % 11 == 0 ? 0 : 1);
        }

        var cycle = ownCycle ? """ "cycle": "2 ms", "phase": "1 ms", """ : "";
        var plan = Bench.Linear("pv", $$"""{{Functions[function % Functions.Length]}}, "request": "on", "filter": "{{filter % 12}} ms", "delay": "2 ms" """,
            cycle + """ "missing": "trip", "gap": "1 s", "signals": { "on": { "column": "r" } }, """);
        foreach (var side in Tune.Run(plan, [Bench.At(at, ("p", p), ("v", v), ("r", r))]).Monitors)
            Assert.Equal(side.Frontier.FirstOrDefault(step => step.Filter * 1000 >= filter % 12)?.Limit, side.Critical);
    }
}
