using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SAR, safe acceleration range.</summary>
[Needs(Kind.Acceleration)]
[AtLeastOneOf("lower", "upper")]
public sealed record Sar : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SAR";
    /// <summary>The least allowed; null: not compared.</summary>
    [Kind(Kind.Acceleration, Allowed.NonNegativeUnlessSigned)] public Quantity? Lower { get; init; }
    /// <summary>The largest allowed; null: not compared.</summary>
    [Kind(Kind.Acceleration, Allowed.NonNegativeUnlessSigned)] public Quantity? Upper { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new RangeMeasures(axis.Acceleration!, Constant.OfOptional(Lower), Constant.OfOptional(Upper), Signed);
}


