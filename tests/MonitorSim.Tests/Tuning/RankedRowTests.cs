using Fractions;
using FsCheck.Xunit;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>The frontier found by ranks is the one found by measures: a column with one exact number kept beside its double has no ranking, though its numbers are the same.</summary>
public class RankedRowTests
{
    private static readonly string[] Functions =
    [
        """ "function": "SLS", "limit": "5 mm/s" """,
        """ "function": "SLS", "limit": "5 mm/s", "signed": true """,
        """ "function": "SSR", "lower": "1 mm/s", "upper": "5 mm/s" """,
        """ "function": "SSR", "lower": "-3 mm/s", "upper": "5 mm/s", "signed": true """,
    ];

    [Property(MaxTest = 400)]
    public void Is_what_measures_give(sbyte[] cells, byte function, bool ownCycle, bool inverted, bool hold)
    {
        if (cells.Length == 0) return;
        var n = cells.Length * 2;
        var (times, speed) = (new long[n], new double[n]);
        for (var k = 0; k < n; k++)
        {
            var cell = cells[k / 2];
            times[k] = k == 0 ? 0 : times[k - 1] + (1 + Math.Abs(cell + k) % 3) * 1_000_000L;
            speed[k] = cell == 9 && k > 1 ? double.NaN : cell % 15 + 0.25 * (k % 2);
        }

        var plan = PlanReader.Parse($$"""
            { "plan": 1, "title": "ranks", {{(ownCycle ? """ "cycle": "2 ms", "phase": "1 ms", """ : "")}} "missing": "{{(hold ? "hold" : "trip")}}", "gap": "1 s",
              "axes": { "x": { "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "mm/s", "invert": {{(inverted ? "true" : "false")}} } },
                "monitors": [ { "name": "m", {{Functions[function % Functions.Length]}}, "delay": "2 ms", "reaction": "stop 0" } ] } } }
            """);
        var first = Array.FindIndex(speed, value => !double.IsNaN(value));
        Dictionary<int, Fraction> beside = first < 0 ? new() { [n] = 0 } : new() { [first] = Fraction.FromDoubleRounded(speed[first]) };
        var ranked = Tune.Run(plan, [new Trace("t", times, [new NumberColumn("v", null, speed)])]);
        var measured = Tune.Run(plan, [new Trace("t", times, [new NumberColumn("v", null, [.. speed], beside)])]);
        Assert.Equal(measured.Monitors.Select(side => string.Join('\n', side.Frontier)), ranked.Monitors.Select(side => string.Join('\n', side.Frontier)));
    }
}
