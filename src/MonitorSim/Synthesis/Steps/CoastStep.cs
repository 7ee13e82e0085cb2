using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Steps;

/// <summary>Coasts to standstill under Coulomb and viscous friction, without torque.</summary>
public sealed record CoastStep : ScenarioStep
{
    /// <inheritdoc/>
    public override string Step => "coast";
    /// <summary>What Coulomb friction alone does: Coulomb friction over inertia.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public required Quantity Deceleration { get; init; }
    /// <summary>Inertia over viscous friction; null: no viscous friction.</summary>
    [Kind(Kind.Time, Allowed.Positive)] public Quantity? TimeConstant { get; init; }

    internal override Profile AppendTo(Profile profile) => profile.Coast(Deceleration, TimeConstant);
}
