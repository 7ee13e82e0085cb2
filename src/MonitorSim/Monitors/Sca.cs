using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SCA, safe cam: an output that is on while the position is inside a range.</summary>
public sealed record Sca : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SCA";
    /// <summary>Pairs of from and to.</summary>
    [Kind(Kind.Position, Allowed.Any)] public required IReadOnlyList<IReadOnlyList<Quantity>> Ranges { get; init; }
    /// <summary>How far inside its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Position)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long its condition must fail to turn the output off; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OffDelay { get; init; }
}
