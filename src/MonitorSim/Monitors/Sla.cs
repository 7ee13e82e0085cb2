using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLA, safely-limited acceleration.</summary>
public sealed record Sla : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLA";
    /// <summary>The largest acceleration.</summary>
    [Kind(Kind.Acceleration, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
    /// <summary>A limit of its own while slowing down; null: the same for both.</summary>
    [Kind(Kind.Acceleration)] public Quantity? Deceleration { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
    public bool Signed { get; init; }
}
