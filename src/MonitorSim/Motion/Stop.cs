using MonitorSim.Motion.Faults;

namespace MonitorSim.Motion;

/// <summary>Simulates how an axis comes to rest.</summary>
/// <example><code>
/// var result = Stop.Simulate(plant, new StopProgram { Reaction = Reaction.Stop0 }, velocity: 0.5);
/// Console.WriteLine($"stands after {result.Time} s and {result.Distance} m");
/// </code></example>
public static class Stop
{
    /// <summary>How long a motion is followed unless said otherwise, s.</summary>
    public const double Horizon = 600;

    /// <summary>Simulates a stop that is demanded at once.</summary>
    /// <param name="plant">What moves.</param>
    /// <param name="program">How it is stopped.</param>
    /// <param name="velocity">The speed at which the stop is demanded, m/s or rad/s, with its sign.</param>
    /// <param name="faults">What is wrong with drive and brake, from the beginning; those of sensors do not act here.</param>
    /// <param name="horizon">How long it is followed, s, > 0.</param>
    /// <exception cref="InputException">A runaway of a drive without a limit.</exception>
    public static StopResult Simulate(Plant plant, StopProgram program, double velocity, IReadOnlyList<MachineFault>? faults = null, double horizon = Horizon)
    {
        ArgumentNullException.ThrowIfNull(plant);
        ArgumentNullException.ThrowIfNull(program);
        return new StopRun(plant, reaction => program with { Reaction = reaction }, MachineCondition.Of(faults ?? [], plant, velocity), [], horizon)
            .From(new(0, 0, velocity, 0, 0), program.Reaction);
    }
}
