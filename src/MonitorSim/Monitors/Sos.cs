using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SOS, safe operating stop: the axis must stay where it is, under torque.</summary>
public sealed record Sos : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SOS";
    /// <summary>The largest distance from where watching began.</summary>
    [Kind(Kind.Position)] public required Quantity Window { get; init; }
    /// <summary>The largest speed; null: not compared.</summary>
    [Kind(Kind.Velocity)] public Quantity? Speed { get; init; }
}
