using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SSR, safe speed range: the speed must stay between two limits.</summary>
[Needs(Kind.Velocity)]
[AtLeastOneOf("lower", "upper")]
public sealed record Ssr : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SSR";
    /// <summary>The least allowed; null: not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Lower { get; init; }
    /// <summary>The largest allowed; null: not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Upper { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new RangeMeasures(axis.Velocity!, Constant.OfOptional(Lower), Constant.OfOptional(Upper), Signed);
}


