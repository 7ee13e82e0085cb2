using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SAR, safe acceleration range: trips where the acceleration is above an upper limit or below a lower one.</summary>
/// <remarks>
/// <para>Equation: side upper: x = |a|, the larger of two recordings, vs upper. Side lower: x = -|a|, of the smaller one, vs -lower; shown as |a| and lower.
/// <see cref="Signed"/>: a and -a of the first recording.</para>
/// <para>Initial condition: none.</para>
/// <para>Start-up: compared from the first watching cycle on; a derived acceleration has no value at the first sample (derived from a derived speed: at the first two).</para>
/// <para>Pitfall: a steady speed is below every lower limit above 0: request it only where the axis is meant to accelerate. An acceleration that is derived twice
/// from a recorded position is mostly noise: choose an estimator that smooths.</para>
/// <para>Standard: SAR of IEC 61800-5-2.</para>
/// </remarks>
[Needs(Kind.Acceleration)]
[AtLeastOneOf("lower", "upper")]
public sealed record Sar : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SAR";
    /// <summary>The least acceleration allowed, m/s² or rad/s², 0 or more unless signed, not above <see cref="Upper"/>; default not compared.</summary>
    [Kind(Kind.Acceleration, Allowed.NonNegativeUnlessSigned)] public Quantity? Lower { get; init; }
    /// <summary>The largest acceleration allowed, m/s² or rad/s², 0 or more unless signed; default not compared.</summary>
    [Kind(Kind.Acceleration, Allowed.NonNegativeUnlessSigned)] public Quantity? Upper { get; init; }
    /// <summary>Whether the quantity itself is compared instead of its magnitude; then limits may be negative; default false.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new RangeMeasures(axis.Acceleration!, Constant.OfOptional(Lower), Constant.OfOptional(Upper), Signed);
}


