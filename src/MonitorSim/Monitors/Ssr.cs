using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SSR, safe speed range: trips where the speed is above an upper limit or below a lower one.</summary>
/// <remarks>
/// <para>Equation: side upper: x = |v|, the larger of two recordings, vs upper. Side lower: x = -|v|, of the smaller one, vs -lower; shown as |v| and lower.
/// <see cref="Signed"/>: v and -v of the first recording.</para>
/// <para>Initial condition: none.</para>
/// <para>Start-up: compared from the first watching cycle on; a derived speed has no value at the first sample.</para>
/// <para>Pitfall: standing still is below every lower limit above 0: request it only where the axis is meant to move, with a delay long enough to get there; and the two sides count
/// their exceedances apart, so that a jump from below to above begins a new one.</para>
/// <para>Standard: SSR of IEC 61800-5-2.</para>
/// </remarks>
[Needs(Kind.Velocity)]
[AtLeastOneOf("lower", "upper")]
public sealed record Ssr : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SSR";
    /// <summary>The least speed allowed, m/s or rad/s, 0 or more unless signed, not above <see cref="Upper"/>; default not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Lower { get; init; }
    /// <summary>The largest speed allowed, m/s or rad/s, 0 or more unless signed; default not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Upper { get; init; }
    /// <summary>Whether the quantity itself is compared instead of its magnitude; then limits may be negative; default false.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new RangeMeasures(axis.Velocity!, Constant.OfOptional(Lower), Constant.OfOptional(Upper), Signed);
}


