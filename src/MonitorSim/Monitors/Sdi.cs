using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SDI, safe direction: the axis must not move against the permitted direction.</summary>
public sealed record Sdi : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SDI";
    /// <summary>The permitted direction.</summary>
    public required Direction Allow { get; init; }
    /// <summary>How far it may move against it.</summary>
    [Kind(Kind.Position)] public required Quantity Tolerance { get; init; }
    /// <summary>From where that is measured.</summary>
    public DirectionReference Reference { get; init; }
}
