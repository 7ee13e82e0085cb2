using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLI, safely-limited increment: one move of limited length, then standstill.</summary>
public sealed record Sli : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLI";
    /// <summary>The longest move.</summary>
    [Kind(Kind.Position)] public required Quantity Increment { get; init; }
    /// <summary>How long the move may take; null: without end.</summary>
    [Kind(Kind.Time)] public Quantity? MoveTime { get; init; }
    /// <summary>The standstill window after the move; null: nothing is compared then.</summary>
    [Kind(Kind.Position)] public Quantity? Window { get; init; }
}
