using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Steps;

/// <summary>Changes the speed at constant acceleration.</summary>
public sealed record RampStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "ramp";
    /// <summary>The speed at the end, with its sign.</summary>
    [Kind(Kind.Velocity, Allowed.Any)] public required Quantity To { get; init; }
    /// <summary>Its magnitude, whether it speeds up or slows down.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public required Quantity Acceleration { get; init; }

    internal override Profile AppendTo(Profile profile) => profile.RampTo(To, Acceleration);
}
