using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Steps;

/// <summary>Moves from rest to rest in the shortest time that the limits allow: a trapezoid of speed, with a jerk limit seven phases.</summary>
[ExactlyOneOf("by", "to")]
public sealed record MoveStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "move";
    /// <summary>How far, with its sign.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? By { get; init; }
    /// <summary>Where to.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? To { get; init; }
    /// <summary>The largest speed; short moves do not reach it.</summary>
    [Kind(Kind.Velocity, Allowed.Positive)] public required Quantity Speed { get; init; }
    /// <summary>The largest acceleration.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public required Quantity Acceleration { get; init; }
    /// <summary>The largest jerk; null: no limit.</summary>
    [Kind(Kind.Jerk, Allowed.Positive)] public Quantity? Jerk { get; init; }

    internal override Profile AppendTo(Profile profile) => By is null ? profile.MoveTo(To!, Speed, Acceleration, Jerk) : profile.MoveBy(By, Speed, Acceleration, Jerk);
}
