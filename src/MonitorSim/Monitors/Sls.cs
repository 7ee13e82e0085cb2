using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLS, safely-limited speed: the speed must not exceed a limit.</summary>
public sealed record Sls : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLS";
    /// <summary>The largest speed allowed; or <see cref="Levels"/>.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Limit { get; init; }
    /// <summary>Limits by condition: the first whose condition holds is chosen.</summary>
    public IReadOnlyList<SpeedLevel>? Levels { get; init; }
    /// <summary>Watches the way down to a limit to come.</summary>
    public Approach? Approach { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
    public bool Signed { get; init; }
}

/// <summary>One of several limits of SLS.</summary>
public sealed record SpeedLevel
{
    /// <summary>When this limit is chosen.</summary>
    public required Condition When { get; init; }
    /// <summary>The largest speed allowed.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
}

/// <summary>A ramp that the speed must keep under until a limit takes force.</summary>
public sealed record Approach
{
    /// <summary>The ramp's deceleration.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public required Quantity Deceleration { get; init; }
    /// <summary>How far the speed may lie above the ramp.</summary>
    [Kind(Kind.Velocity)] public required Quantity Tolerance { get; init; }
}
