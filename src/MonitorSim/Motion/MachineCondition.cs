using MonitorSim.Motion.Faults;

namespace MonitorSim.Motion;

/// <summary>What is wrong with drive and brake at one time.</summary>
/// <param name="Runaway">The direction of a runaway, 1 or -1; 0: none.</param>
/// <param name="HasNoTorque">The drive gives none.</param>
/// <param name="IgnoresRamp">The drive does not take part in stops.</param>
/// <param name="BrakeStaysOpen">The brake does not close.</param>
internal readonly record struct MachineCondition(int Runaway = 0, bool HasNoTorque = false, bool IgnoresRamp = false, bool BrakeStaysOpen = false)
{
    /// <summary>The condition with all of these faults.</summary>
    /// <param name="faults">The faults.</param>
    /// <param name="plant">What they act on.</param>
    /// <param name="velocity">The speed at which a runaway begins.</param>
    /// <exception cref="InputException">A runaway of a drive without a limit.</exception>
    public static MachineCondition Of(IEnumerable<MachineFault> faults, Plant plant, double velocity)
    {
        var all = default(MachineCondition);
        foreach (var fault in faults) all = all.With(fault, plant, velocity);
        return all;
    }

    /// <summary>One fault more.</summary>
    /// <inheritdoc cref="Of"/>
    public MachineCondition With(MachineFault fault, Plant plant, double velocity) => fault switch
    {
        RunawayFault runaway => this with { Runaway = DirectionOf(runaway, plant, velocity) },
        TorqueLossFault => this with { HasNoTorque = true },
        IgnoredRampFault => this with { IgnoresRamp = true },
        OpenBrakeFault => this with { BrakeStaysOpen = true },
        _ => this,
    };

    private static int DirectionOf(RunawayFault runaway, Plant plant, double velocity)
    {
        if (double.IsPositiveInfinity(plant.Limit))
            throw new InputException(new Problem("plant.limit", "a runaway at full torque needs the drive's limit", "give the plant its limit, such as \"2.4 kN\" or \"12 N·m\""));
        return runaway.Direction switch
        {
            RunawayDirection.Positive => 1,
            RunawayDirection.Negative => -1,
            _ => velocity != 0 ? Math.Sign(velocity) : plant.Load < 0 ? -1 : 1,
        };
    }
}
