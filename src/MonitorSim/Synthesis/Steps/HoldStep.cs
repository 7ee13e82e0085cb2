using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Steps;

/// <summary>Keeps the present speed; at rest, stands still.</summary>
public sealed record HoldStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "hold";
    /// <summary>How long.</summary>
    [Kind(Kind.Time)] public required Quantity For { get; init; }

    internal override Profile AppendTo(Profile profile) => profile.Hold(For);
}
