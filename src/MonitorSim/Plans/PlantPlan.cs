using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>What moves: for simulated motion, stopping and fits. All of the load side.</summary>
public sealed record PlantPlan
{
    /// <summary>Moving mass (linear axis), kg.</summary>
    [Kind(Kind.Inertia, Allowed.Positive)] public Quantity? Mass { get; init; }
    /// <summary>Moment of inertia (rotary axis), kg·m².</summary>
    [Kind(Kind.Inertia, Allowed.Positive)] public Quantity? Inertia { get; init; }
    /// <summary>Coulomb friction, N or N·m; default 0.</summary>
    [Kind(Kind.Force)] public Quantity? Coulomb { get; init; }
    /// <summary>Viscous friction, N·s/m or N·m·s/rad; default 0.</summary>
    [Kind(Kind.Viscous)] public Quantity? Viscous { get; init; }
    /// <summary>Constant load such as gravity, positive towards rising positions; default 0.</summary>
    [Kind(Kind.Force, Allowed.Any)] public Quantity? Load { get; init; }
    /// <summary>The largest force or torque of the drive.</summary>
    [Kind(Kind.Force)] public Quantity? Limit { get; init; }
    /// <summary>The holding brake.</summary>
    public BrakePlan? Brake { get; init; }
    /// <summary>Braking by short circuit of the motor when the torque is off.</summary>
    public ShortCircuitPlan? ShortCircuit { get; init; }
}

/// <summary>A holding brake.</summary>
public sealed record BrakePlan
{
    /// <summary>Its force or torque, N or N·m.</summary>
    [Kind(Kind.Force)] public required Quantity Torque { get; init; }
    /// <summary>From its command to its full torque; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Apply { get; init; }
}

/// <summary>Short-circuit braking of a permanent-magnet motor, by its constants or by a table.</summary>
public sealed record ShortCircuitPlan
{
    /// <summary>Phase resistance.</summary>
    [Kind(Kind.Resistance)] public Quantity? Resistance { get; init; }
    /// <summary>Phase inductance.</summary>
    [Kind(Kind.Inductance)] public Quantity? Inductance { get; init; }
    /// <summary>Flux linkage of the magnets.</summary>
    [Kind(Kind.FluxLinkage)] public Quantity? Flux { get; init; }
    /// <summary>Pole pairs.</summary>
    public int? PolePairs { get; init; }
    /// <summary>Braking force or torque over speed, load side, instead of the constants.</summary>
    public IReadOnlyList<BrakingPoint>? Table { get; init; }
}

/// <summary>One point of a braking table; between points it is interpolated linearly.</summary>
public sealed record BrakingPoint
{
    /// <summary>Speed.</summary>
    [Kind(Kind.Velocity)] public required Quantity Speed { get; init; }
    /// <summary>Braking force or torque at that speed.</summary>
    [Kind(Kind.Force)] public required Quantity Torque { get; init; }
}
