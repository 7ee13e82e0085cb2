using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>STR, safe torque range: the torque with its sign must stay between two limits.</summary>
[Needs(Kind.Torque)]
[AtLeastOneOf("lower", "upper")]
public sealed record Str : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "STR";
    /// <summary>The least allowed; null: not compared.</summary>
    [Kind(Kind.Torque, Allowed.Any)] public Quantity? Lower { get; init; }
    /// <summary>The largest allowed; null: not compared.</summary>
    [Kind(Kind.Torque, Allowed.Any)] public Quantity? Upper { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new RangeMeasures(axis.Torque!, Constant.OfOptional(Lower), Constant.OfOptional(Upper), true);
}


