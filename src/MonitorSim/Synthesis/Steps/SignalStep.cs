using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Steps;

/// <summary>From now on a signal is on or off; before it was first mentioned it is off.</summary>
public sealed record SignalStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "signal";
    /// <summary>The signal's name.</summary>
    public required string Name { get; init; }
    /// <summary>What it becomes.</summary>
    [AlwaysWritten] public bool On { get; init; } = true;

    internal override Profile AppendTo(Profile profile) => profile.Signal(Name, On);
}
