using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>One limit side of one function, met from both sides.</summary>
/// <param name="Function">The monitor's function and parameters, as JSON.</param>
/// <param name="Column">The letter of the recorded column.</param>
/// <param name="Side">The side that is met.</param>
/// <param name="Rest">A value that exceeds nothing; where there is a reference, the reference.</param>
/// <param name="At">A value at the limit.</param>
/// <param name="Above">A value just beyond it.</param>
/// <param name="HasReference">Whether the function measures from where watching began.</param>
public sealed record Boundary(string Function, char Column, string Side, double Rest, double At, double Above, bool HasReference = false)
{
    /// <summary>Every function that trips, each side at least once.</summary>
    public static readonly Boundary[] All =
    [
        new(""" "function": "SLS", "limit": "33 mm/s" """, 'v', "upper", 0, 33, 33.1),
        new(""" "function": "SLS", "limit": "0.033 m/s" """, 'v', "upper", 0, -33, -33.00000000001),
        new(""" "function": "SLS", "limit": "-5 mm/s", "signed": true """, 'v', "upper", -6, -5, -4.9),
        new(""" "function": "SSR", "lower": "10.1 mm/s", "upper": "33 mm/s" """, 'v', "upper", -20, -33, 33.1),
        new(""" "function": "SSR", "lower": "10.1 mm/s", "upper": "33 mm/s" """, 'v', "lower", 20, -10.1, 10),
        new(""" "function": "SSR", "lower": "-10.1 mm/s", "signed": true """, 'v', "lower", 20, -10.1, -10.2),
        new(""" "function": "SLA", "limit": "500 mm/s²" """, 'a', "upper", 0, -500, 500.1),
        new(""" "function": "SAR", "lower": "0.1 m/s²", "upper": "0.5 m/s²" """, 'a', "upper", 200, -500, -500.1),
        new(""" "function": "SAR", "lower": "0.1 m/s²", "upper": "0.5 m/s²" """, 'a', "lower", 200, 100, -99.9),
        new(""" "function": "SLT", "limit": "12.5 N" """, 'q', "upper", 0, -12.5, 12.6),
        new(""" "function": "STR", "lower": "-3 N", "upper": "0.0125 kN" """, 'q', "upper", 0, 12.5, 12.6),
        new(""" "function": "STR", "lower": "-3 N", "upper": "0.0125 kN" """, 'q', "lower", 0, -3, -3.1),
        new(""" "function": "SLP", "lower": "-20.1 mm", "upper": "300.3 mm" """, 'p', "upper", 0, 300.3, 300.4),
        new(""" "function": "SLP", "lower": "-2.01 cm" """, 'p', "lower", 0, -20.1, -20.2),
        new(""" "function": "SDI", "allow": "positive", "tolerance": "0.2 mm" """, 'p', "upper", 10.5, 10.3, 10.29, true),
        new(""" "function": "SDI", "allow": "negative", "tolerance": "0.2 mm", "reference": "start" """, 'p', "upper", 10.3, 10.5, 10.51, true),
        new(""" "function": "SLI", "increment": "0.2 mm" """, 'p', "increment", 10.3, 10.5, 10.51, true),
        new(""" "function": "SOS", "window": "0.2 mm" """, 'p', "window", 10.3, 10.5, 10.09, true),
    ];

    /// <summary>Replays values of the column, one a millisecond.</summary>
    /// <param name="values">The values.</param>
    /// <param name="more">More of the monitor's members, such as a delay.</param>
    /// <param name="head">More of the plan's members, each followed by a comma.</param>
    public ReplayResult Replayed(IEnumerable<double> values, string more = "", string head = "") =>
        Replay.Run(Bench.Linear(Column.ToString(), Function + (more.Length > 0 ? ", " + more : ""), head), Bench.Milliseconds((Column.ToString(), [.. values])));

    /// <summary>A recording at rest, but for the cycles that are named.</summary>
    public IEnumerable<double> RestBut(int count, Func<int, bool> isAbove) => Enumerable.Range(0, count).Select(k => isAbove(k) ? Above : Rest);

    /// <inheritdoc/>
    public override string ToString() => $"{Function.Trim().Replace("\"", "", StringComparison.Ordinal)}: {Side}";
}
