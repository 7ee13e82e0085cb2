using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLP, safely-limited position.</summary>
public sealed record Slp : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLP";
    /// <summary>The least allowed; null: not compared.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? Lower { get; init; }
    /// <summary>The largest allowed; null: not compared.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? Upper { get; init; }
}
