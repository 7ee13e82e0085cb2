using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>STR, safe torque range: trips where the torque or force, with its sign, is above an upper limit or below a lower one.</summary>
/// <remarks>
/// <para>Equation: side upper: x = q vs upper; side lower: x = -q vs -lower, shown as q and lower. Of two recordings the first counts.</para>
/// <para>Initial condition: none.</para>
/// <para>Start-up: compared from the first watching cycle on; torque is never derived.</para>
/// <para>Pitfall: unlike the ranges of speed and acceleration it compares the quantity with its sign: a range for both directions needs a negative lower limit.</para>
/// <para>Standard: STR of IEC 61800-5-2 (force of linear motors).</para>
/// </remarks>
[Needs(Kind.Torque)]
[AtLeastOneOf("lower", "upper")]
public sealed record Str : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "STR";
    /// <summary>The least torque allowed, N or N·m, of any sign, not above <see cref="Upper"/>; default not compared.</summary>
    [Kind(Kind.Torque, Allowed.Any)] public Quantity? Lower { get; init; }
    /// <summary>The largest torque allowed, N or N·m, of any sign; default not compared.</summary>
    [Kind(Kind.Torque, Allowed.Any)] public Quantity? Upper { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new RangeMeasures(axis.Torque!, Constant.OfOptional(Lower), Constant.OfOptional(Upper), true);
}


