using System.Globalization;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Explain;

/// <summary>Shows SI results in the units in which the plan states the limits.</summary>
/// <param name="plan">The plan.</param>
public sealed class UserUnits(Plan plan)
{
    /// <summary>A value of a monitor's side, in the unit of its limit; a dash where there is none.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="monitor">The monitor or stop.</param>
    /// <param name="side">The limit side.</param>
    /// <param name="si">The value, SI.</param>
    /// <param name="unit">The SI unit, used where the plan states none.</param>
    public string Text(string axis, string monitor, string side, double? si, string? unit) => Text(axis, monitor, side, null, si, unit);

    internal string Text(string axis, string monitor, string side, int? level, double? si, string? unit)
    {
        if (si is not { } value) return "–";
        return UnitOf(axis, monitor, side, level, unit) is { } written ? written.Format(value) : Plain(value, unit);
    }

    /// <summary>A value and a limit with as many digits as it takes to tell them apart.</summary>
    internal (string Value, string Limit) Apart(string axis, string monitor, string side, int? level, double? value, double? limit, string? unit)
    {
        if (value is { } x && limit is { } bound && x != bound && UnitOf(axis, monitor, side, level, unit) is { } written)
        {
            foreach (var digits in (int[])[6, 9, 12, 15, 17])
                if (written.Format(x, digits) is var shown && shown != written.Format(bound, digits)) return (shown, written.Format(bound, digits));
        }

        return (Text(axis, monitor, side, level, value, unit), Text(axis, monitor, side, level, limit, unit));
    }

    /// <summary>A critical limit, rounded to the side on which it does not trip; a dash where there is none.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="monitor">The monitor or stop.</param>
    /// <param name="side">The limit side.</param>
    /// <param name="level">The level, from 0, or null.</param>
    /// <param name="critical">The smallest limit that does not trip (for lower sides the largest), SI.</param>
    /// <param name="unit">The SI unit.</param>
    /// <param name="isLower">Whether smaller limits are the safe ones.</param>
    public string Enough(string axis, string monitor, string side, int? level, double? critical, string? unit, bool isLower) =>
        critical is { } value && UnitOf(axis, monitor, side, level, unit) is { } written && double.IsFinite(value)
            ? SafeRounding.Text(value, written, isLower) : Text(axis, monitor, side, level, critical, unit);

    /// <summary>A difference of two values of a side.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="monitor">The monitor or stop.</param>
    /// <param name="side">The limit side.</param>
    /// <param name="level">The level, from 0, or null.</param>
    /// <param name="si">The difference, SI.</param>
    /// <param name="unit">The SI unit.</param>
    public string Difference(string axis, string monitor, string side, int? level, double si, string? unit) =>
        UnitOf(axis, monitor, side, level, unit) is { } written ? written.FormatDifference(si) : Plain(si, unit);

    private static string Plain(double value, string? unit) => string.Create(CultureInfo.InvariantCulture, $"{value} {unit}").TrimEnd();

    internal Unit? UnitOf(string axis, string monitor, string side, int? level, string? unit) =>
        Limit(axis, monitor, side, level)?.Unit ?? (unit is not null && Unit.TryParse(unit, out var known, out _) ? known : null);

    /// <summary>The limit of a side and level as the plan states it; null where it states none.</summary>
    internal Quantity? Limit(string axis, string monitor, string side, int? level) =>
        level is { } k && plan.Axes.TryGetValue(axis, out var of) && of.Monitors.FirstOrDefault(m => m.Name == monitor) is Sls { Levels: { } levels } && k < levels.Count
            ? levels[k].Limit
            : Limit(axis, monitor, side);

    /// <summary>A reaction as plans spell it.</summary>
    public static string Reaction(Reaction reaction) => ResultJson.Spelling(reaction);

    /// <summary>The limit of a side as the plan states it; null where it states none.</summary>
    public Quantity? Limit(string axis, string monitor, string side)
    {
        if (!plan.Axes.TryGetValue(axis, out var of)) return null;
        return of.Monitors.FirstOrDefault(m => m.Name == monitor) is { } found ? OfMonitor(found, side) : OfStop(of.Stops, monitor, side) ?? OfTwoChannels(of.Channels, monitor);
    }

    private static Quantity? OfMonitor(MonitorPlan monitor, string side) => (monitor, side) switch
    {
        (Sls sls, "approach") => sls.Approach?.Tolerance,
        (Sls sls, _) => sls.Limit ?? sls.Levels?[0].Limit,
        (Ssr ssr, _) => side == "lower" ? ssr.Lower : ssr.Upper,
        (Sar sar, _) => side == "lower" ? sar.Lower : sar.Upper,
        (Str str, _) => side == "lower" ? str.Lower : str.Upper,
        (Slp slp, _) => side == "lower" ? slp.Lower : slp.Upper,
        (Sdi sdi, _) => sdi.Tolerance,
        (Sla sla, "deceleration") => sla.Deceleration,
        (Sla sla, _) => sla.Limit,
        (Slt slt, _) => slt.Limit,
        (Sli sli, "window") => sli.Window,
        (Sli sli, _) => sli.Increment,
        (Sos sos, "speed") => sos.Speed,
        (Sos sos, _) => sos.Window,
        (Smt smt, _) => smt.Limit,
        _ => null,
    };

    private static Quantity? OfStop(StopsPlan stops, string stop, string side) => (stop, side) switch
    {
        ("STO", _) => stops.Sto?.Residual,
        ("SBC", _) => stops.Sbc?.Window,
        ("SOS", "speed") => stops.Sos?.Speed,
        ("SOS", _) => stops.Sos?.Window,
        ("SS1", _) => OfRamp(stops.Ss1, side),
        ("SS2", _) => OfRamp(stops.Ss2, side),
        _ => null,
    };

    private static Quantity? OfRamp(RampStopPlan? stop, string side) => side switch
    {
        "timeLimit" => stop?.TimeLimit,
        "deceleration" => stop?.Deceleration,
        _ => stop?.Tolerance,
    };

    private static Quantity? OfTwoChannels(ChannelsPlan channels, string monitor) => monitor.Split(' ')[0] switch
    {
        "position" => channels.Position?.Second?.Tolerance,
        "velocity" => channels.Velocity?.Second?.Tolerance,
        "acceleration" => channels.Acceleration?.Second?.Tolerance,
        "torque" => channels.Torque?.Second?.Tolerance,
        "temperature" => channels.Temperature?.Second?.Tolerance,
        _ => null,
    };
}
