using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>What moves, in SI and of the load side: kg, N, N·s/m, m on a linear axis; kg·m², N·m, N·m·s/rad, rad on a rotary one.</summary>
/// <remarks>
/// <para>M·dv/dt = drive + load - viscous·v - (coulomb + brake)·sign(v) + short circuit(v). At rest it stays at rest while |drive + load| &lt;= coulomb + brake:
/// dry friction holds, it neither creeps nor chatters.</para>
/// <para>Pitfall: dry friction is the same at rest and in motion; a machine that sticks harder than it slides needs the larger value to hold and the smaller one
/// to stop. Reference: K. J. Åström, C. Canudas-de-Wit, IEEE Control Systems 28 (2008) 101, on Coulomb friction and sticking.</para>
/// </remarks>
public sealed record Plant
{
    /// <summary>Mass or moment of inertia, kg or kg·m², > 0.</summary>
    public required double Inertia { get; init; }
    /// <summary>Coulomb friction, N or N·m, >= 0.</summary>
    public double Coulomb { get; init; }
    /// <summary>Viscous friction, N·s/m or N·m·s/rad, >= 0.</summary>
    public double Viscous { get; init; }
    /// <summary>Constant load such as gravity, N or N·m, positive towards rising positions.</summary>
    public double Load { get; init; }
    /// <summary>The largest force or torque of the drive, either way, N or N·m, >= 0; infinite where none is stated.</summary>
    public double Limit { get; init; } = double.PositiveInfinity;
    /// <summary>The holding brake, or null.</summary>
    public Brake? Brake { get; init; }
    /// <summary>Braking by short circuit of the motor while its torque is off, or null.</summary>
    public ShortCircuit? ShortCircuit { get; init; }

    /// <summary>Kinetic energy, J.</summary>
    /// <param name="speed">m/s or rad/s.</param>
    public double KineticEnergy(double speed) => Inertia * speed * speed / 2;

    /// <summary>The plant of an axis. The motor of a short circuit sits behind the axis's <c>gear</c> and <c>feed</c>.</summary>
    /// <exception cref="InputException">The axis has no plant, or a short circuit by constants on a linear axis without <c>feed</c>.</exception>
    public static Plant Of(AxisPlan axis)
    {
        var plan = axis.Plant ?? throw new InputException(new Problem("plant", "the axis has no plant", "describe what moves: \"plant\": { \"mass\": \"180 kg\", … }"));
        var isRotary = axis.Motion == AxisMotion.Rotary;
        if (plan.ShortCircuit is { Table: null } && !isRotary && axis.Feed is null)
        {
            throw new InputException(new Problem("plant.shortCircuit", "a linear axis without feed: how fast its motor turns is not known",
                "give the axis its feed, such as 20 mm/rev, or the short circuit a table of forces over speeds"));
        }

        var turns = axis.Gear?.MotorPerOutput is { } gear ? gear.ToDouble() : 1;
        return Of(plan, axis.Motion, isRotary || axis.Feed is null ? turns : turns / axis.Feed.Si);
    }

    /// <summary>The plant in SI.</summary>
    /// <param name="plan">As the plan states it.</param>
    /// <param name="motion">Linear or rotary: whether its mass or its inertia counts.</param>
    /// <param name="motorPerLoad">How far the motor turns, rad, for one rad or m of the load; for short-circuit braking by the motor's constants.</param>
    /// <exception cref="InputException">Mass (linear) or inertia (rotary) is missing.</exception>
    public static Plant Of(PlantPlan plan, AxisMotion motion, double motorPerLoad = 1)
    {
        var (inertia, name) = motion == AxisMotion.Rotary ? (plan.Inertia, "inertia") : (plan.Mass, "mass");
        return new()
        {
            Inertia = inertia?.Si ?? throw new InputException(new Problem($"plant.{name}", $"there is no {name}", $"give the {name} that moves")),
            Coulomb = plan.Coulomb?.Si ?? 0,
            Viscous = plan.Viscous?.Si ?? 0,
            Load = plan.Load?.Si ?? 0,
            Limit = plan.Limit?.Si ?? double.PositiveInfinity,
            Brake = plan.Brake is { } brake ? new(brake.Torque.Si, brake.Apply?.Si ?? 0) : null,
            ShortCircuit = ShortCircuit.Of(plan.ShortCircuit, motorPerLoad),
        };
    }
}

/// <summary>A holding brake: nothing until it has closed, its full torque from then on.</summary>
/// <param name="Torque">N or N·m, >= 0.</param>
/// <param name="Apply">From its command until it has closed, s, >= 0.</param>
public sealed record Brake(double Torque, double Apply);
