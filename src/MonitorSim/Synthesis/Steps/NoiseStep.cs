using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Steps;

/// <summary>From now on positions or speeds carry noise; a deviation of 0 ends it.</summary>
public sealed record NoiseStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "noise";
    /// <summary>Its standard deviation, a position or a speed.</summary>
    [Kind(Kind.Channel, Allowed.NonNegative)] public required Quantity Deviation { get; init; }
    /// <summary>Which noise, within the scenario's seed; the same one gives the same noise.</summary>
    public int Seed { get; init; }

    internal override Profile AppendTo(Profile profile) => profile.Noise(Deviation, Seed);
}
