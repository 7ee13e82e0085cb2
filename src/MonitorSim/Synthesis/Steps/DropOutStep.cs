using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Steps;

/// <summary>From now on the cells of the axis are empty for a while; the motion goes on with the next step.</summary>
public sealed record DropOutStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "dropOut";
    /// <summary>How long.</summary>
    [Kind(Kind.Time)] public required Quantity For { get; init; }

    internal override Profile AppendTo(Profile profile) => profile.DropOut(For);
}
