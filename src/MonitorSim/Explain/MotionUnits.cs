using System.Globalization;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Explain;

/// <summary>Shows the motion of an axis in the units that its plan uses: positions as they were recorded, speeds as they are limited.</summary>
/// <param name="axis">The axis.</param>
public sealed class MotionUnits(AxisPlan axis)
{
    private readonly bool _isRotary = axis.Motion == AxisMotion.Rotary;

    /// <summary>Of positions and distances.</summary>
    public Unit Position => Written(axis.Channels.Position?.Unit) ?? Unit.Parse(_isRotary ? "deg" : "mm");

    /// <summary>Of speeds.</summary>
    public Unit Speed => Written(axis.Monitors.Select(SpeedUnit).OfType<Unit>().FirstOrDefault()) ?? Written(axis.Channels.Velocity?.Unit) ?? Unit.Parse(_isRotary ? "rpm" : "mm/s");

    /// <summary>Of the drive's torque or force.</summary>
    public Unit Torque => axis.Plant?.Limit?.Unit ?? Unit.Parse(_isRotary ? "N·m" : "N");

    /// <summary>A distance.</summary>
    public string Distance(double? si) => si is { } value ? Position.FormatDifference(value, 4) : "–";

    /// <summary>A speed.</summary>
    public string Velocity(double si) => Speed.Format(si, 4);

    /// <summary>A time after a fault or a demand; a dash where there is none.</summary>
    public static string Time(double? seconds) => seconds is not { } time ? "–"
        : time < 1 ? (time * 1000).ToString("0.#", CultureInfo.InvariantCulture) + " ms" : time.ToString("0.###", CultureInfo.InvariantCulture) + " s";

    /// <summary>An energy.</summary>
    public static string Energy(double si) => Joule.Format(si, 4);

    private static readonly Unit Joule = Unit.Parse("J");

    private static Unit? SpeedUnit(MonitorPlan monitor) => monitor switch
    {
        Sls sls => (sls.Limit ?? sls.Levels?[0].Limit)?.Unit,
        Ssr ssr => (ssr.Upper ?? ssr.Lower)?.Unit,
        _ => null,
    };

    // A channel of the motor side has units of the motor.
    private Unit? Written(Unit? unit) => unit is not null && (unit.Dimension.Angle != 0) == _isRotary && unit.Dimension.Length == (_isRotary ? 0 : 1) ? unit : null;
}
