using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SMT, safe motor temperature: an output that is on while the temperature is allowed; trips only with a reaction.</summary>
public sealed record Smt : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SMT";
    /// <summary>The highest temperature allowed.</summary>
    [Kind(Kind.Temperature, Allowed.Any)] public required Quantity Limit { get; init; }
    /// <summary>How far inside its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Temperature)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long its condition must fail to turn the output off; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OffDelay { get; init; }
}
