using MonitorSim.Motion;
using MonitorSim.Plans;

namespace MonitorSim.Tuning;

/// <summary>A stop as the plant of an axis makes it: ramp within the torque limit, coasting, brake, short circuit; the worse of both directions where a load makes them differ.</summary>
/// <remarks>The way begins where the drive acts. Until then, a <c>reactionDelay</c> long, the axis goes on at its speed: that is the chain's, and taken off here. A stop that does not
/// come to rest within ten minutes takes for ever, and so does one from more than 10⁵ m/s or rad/s.</remarks>
/// <param name="plant">What moves.</param>
/// <param name="program">How it stops.</param>
public sealed class PlantStopping(Plant plant, StopProgram program) : IStopping
{
    private const double Fastest = 1e5;

    /// <summary>The stop that a reaction of an axis makes.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="axis">The axis; it needs a plant.</param>
    /// <param name="reaction">Which stop.</param>
    /// <exception cref="InputException">The axis has no plant, or does not define that stop.</exception>
    public static PlantStopping Of(Plan plan, AxisPlan axis, Reaction reaction) => new(Plant.Of(axis), StopProgram.Of(plan, axis, reaction));

    /// <summary>What a runaway of the drive accelerates an axis with at most, m/s² or rad/s²: full torque and load the same way, against dry friction alone.</summary>
    /// <param name="plant">The axis.</param>
    /// <exception cref="InputException">The plant has no limit.</exception>
    public static double RunawayAcceleration(Plant plant)
    {
        ArgumentNullException.ThrowIfNull(plant);
        return double.IsFinite(plant.Limit) ? Math.Max(0, (plant.Limit + Math.Abs(plant.Load) - plant.Coulomb) / plant.Inertia)
            : throw new InputException(new Problem("plant.limit", "a runaway at full torque needs the drive's limit", "give the plant its limit, such as \"2.4 kN\" or \"12 N·m\""));
    }

    /// <inheritdoc/>
    public double Time(double speed) => Worst(speed, (stop, _) => (stop.Time ?? double.PositiveInfinity) - program.ReactionDelay);

    /// <inheritdoc/>
    public double Distance(double speed) => Worst(speed, (stop, from) => stop.Time is null ? double.PositiveInfinity : stop.Distance - from * program.ReactionDelay);

    /// <inheritdoc/>
    public double HighestSpeed(double speed) => Worst(speed, (stop, _) => stop.PeakSpeed);

    /// <inheritdoc/>
    public IStopping? Times(double factor) => null;

    private double Worst(double speed, Func<StopResult, double, double> figure)
    {
        if (!(speed <= Fastest)) return double.PositiveInfinity;
        var way = figure(Stop.Simulate(plant, program, speed), speed);
        return Math.Max(0, plant.Load == 0 ? way : Math.Max(way, figure(Stop.Simulate(plant, program, -speed), speed)));
    }
}
