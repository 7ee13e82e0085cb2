using Fractions;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>A value of every channel that lies within all limits of an axis, where there is one.</summary>
internal static class RestValues
{
    public static Dictionary<Kind, Fraction> Of(AxisPlan axis)
    {
        var ranges = new Dictionary<Kind, (Fraction? Low, Fraction? High)>();
        foreach (var kind in new[] { Kind.Position, Kind.Velocity, Kind.Acceleration, Kind.Torque, Kind.Temperature }) ranges[kind] = (null, null);
        foreach (var monitor in axis.Monitors)
            foreach (var (kind, low, high) in Limits(monitor)) ranges[kind] = Meet(ranges[kind], low?.Exact, monitor is Slp && axis.Modulo is { } modulo ? Unwrapped(low!, high!, modulo) : high?.Exact);
        return ranges.ToDictionary(range => range.Key, range => Within(range.Value.Low, range.Value.High));
    }

    /// <summary>A value inside a range: 0 if it is, else the middle, else well past the only end.</summary>
    public static Fraction Within(Fraction? low, Fraction? high)
    {
        if ((low is null || low < Fraction.Zero) && (high is null || high > Fraction.Zero)) return Fraction.Zero;
        if (low is { } from && high is { } to) return (from + to) / 2;
        return low is { } least ? Past(least, 1) : high is { } most ? Past(most, -1) : Fraction.Zero;
    }

    /// <summary>The lowest limit above 0 that any monitor of an axis sets to its speed; null: none.</summary>
    public static Fraction? SlowestLimit(AxisPlan axis) => axis.Monitors.SelectMany(Limits).Where(limit => limit.Kind == Kind.Velocity).Select(limit => limit.High?.Exact).Where(high => high > Fraction.Zero).Min();

    /// <summary>The upper end of a window that may wrap.</summary>
    private static Fraction Unwrapped(Quantity low, Quantity high, Quantity modulo)
    {
        var upper = high.Exact;
        while (upper < low.Exact) upper += modulo.Exact;
        return upper;
    }

    private static Fraction Past(Fraction end, int direction) => end == Fraction.Zero ? end : end + direction * end.Abs() / 2;

    /// <summary>Lower limits of magnitudes are met from above 0, upper ones too: their lower end is open.</summary>
    private static IEnumerable<(Kind Kind, Quantity? Low, Quantity? High)> Limits(MonitorPlan monitor) => monitor switch
    {
        Sls { Limit: { } limit } => [(Kind.Velocity, null, limit)],
        Sls { Levels: { } levels } => levels.Select(level => (Kind.Velocity, (Quantity?)null, (Quantity?)level.Limit)),
        Ssr ssr => [(Kind.Velocity, ssr.Lower, ssr.Upper)],
        Sla sla => [(Kind.Acceleration, null, sla.Limit)],
        Sar sar => [(Kind.Acceleration, sar.Lower, sar.Upper)],
        Slt slt => [(Kind.Torque, null, slt.Limit)],
        Str str => [(Kind.Torque, str.Lower, str.Upper)],
        Slp slp => [(Kind.Position, slp.Lower, slp.Upper)],
        Smt smt => [(Kind.Temperature, null, smt.Limit)],
        _ => [],
    };

    /// <summary>What both ranges allow; the first where nothing is.</summary>
    private static (Fraction? Low, Fraction? High) Meet((Fraction? Low, Fraction? High) range, Fraction? low, Fraction? high)
    {
        var from = low is null || (range.Low is { } l && l > low) ? range.Low : low;
        var to = high is null || (range.High is { } h && h < high) ? range.High : high;
        return from > to ? range : (from, to);
    }
}
