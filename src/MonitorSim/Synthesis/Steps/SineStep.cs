using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Steps;

/// <summary>Swings in whole cycles on top of the present speed, and ends with that speed again.</summary>
public sealed record SineStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "sine";
    /// <summary>Half the way from turning point to turning point, or the largest change of speed.</summary>
    [Kind(Kind.Channel, Allowed.Any)] public required Quantity Amplitude { get; init; }
    /// <summary>Cycles a second.</summary>
    [Kind(Kind.Rate, Allowed.Positive)] public required Quantity Frequency { get; init; }
    /// <summary>How many cycles, at least 1.</summary>
    public int Cycles { get; init; } = 1;

    internal override Profile AppendTo(Profile profile) => profile.Sine(Amplitude, Frequency, Cycles);
}
