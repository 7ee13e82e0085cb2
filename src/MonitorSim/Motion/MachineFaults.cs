using MonitorSim.Motion.Faults;

namespace MonitorSim.Motion;

/// <summary>What is wrong with drive and brake.</summary>
/// <param name="Runaway">The direction of a runaway, 1 or -1; 0: none.</param>
/// <param name="HasNoTorque">The drive gives none.</param>
/// <param name="IgnoresRamp">The drive does not take part in stops.</param>
/// <param name="BrakeStaysOpen">The brake does not close.</param>
internal readonly record struct MachineFaults(int Runaway = 0, bool HasNoTorque = false, bool IgnoresRamp = false, bool BrakeStaysOpen = false)
{
    /// <summary>Those of a list; others are of sensors or people and do not act here.</summary>
    /// <param name="faults">The faults.</param>
    /// <param name="plant">What they act on.</param>
    /// <param name="velocity">The speed at which a runaway begins.</param>
    /// <exception cref="InputException">A runaway of a drive without a limit.</exception>
    public static MachineFaults Of(IEnumerable<Fault> faults, Plant plant, double velocity)
    {
        var all = default(MachineFaults);
        foreach (var fault in faults)
        {
            all = fault switch
            {
                Runaway runaway => all with { Runaway = DirectionOf(runaway, plant, velocity) },
                LossOfTorque => all with { HasNoTorque = true },
                RampIgnored => all with { IgnoresRamp = true },
                Faults.BrakeStaysOpen => all with { BrakeStaysOpen = true },
                _ => all,
            };
        }

        return all;
    }

    private static int DirectionOf(Runaway runaway, Plant plant, double velocity)
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
