using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLT, safely-limited torque (or force).</summary>
[Needs(Kind.Torque)]
public sealed record Slt : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLT";
    /// <summary>The largest torque.</summary>
    [Kind(Kind.Torque, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis) => new RangeMeasures(axis.Torque!, null, Constant.Of(Limit), Signed);
}


