using MonitorSim.Monitors;
using MonitorSim.Motion;
using MonitorSim.Plans;

namespace MonitorSim.Tuning;

/// <summary>A hazard where the plan says what moves: how the axis stops, what a runaway accelerates it with and what it weighs come from its plant, not from the user.</summary>
public static class PlantHazards
{
    /// <summary>The same hazard for each speed limit (SLS, SSR) that stops an axis with a plant, in the order of the plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="asked">What is allowed, and of which limits; its way to stop does not matter. A fault acceleration of 0 stands for a runaway at full torque.</param>
    /// <exception cref="InputException">An axis concerned lacks the stop that its limit demands, or its plant the limit of its drive.</exception>
    public static IReadOnlyList<Hazard> Of(Plan plan, Hazard asked)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(asked);
        return
        [
            .. from axis in plan.Axes
               where axis.Value.Plant is not null && asked.Unit == (axis.Value.Motion == AxisMotion.Rotary ? "rad/s" : "m/s")
               from monitor in axis.Value.Monitors
               let name = $"{axis.Key}.{monitor.Name}"
               let reaction = monitor.Reaction ?? monitor.DefaultReaction
               where monitor is Sls or Ssr { Upper: not null } && reaction != Reaction.None && (asked.For is null || asked.For == axis.Key || asked.For == name)
               select Of(plan, axis.Value, reaction, asked) with { For = name },
        ];
    }

    private static Hazard Of(Plan plan, AxisPlan axis, Reaction reaction, Hazard asked)
    {
        var plant = Plant.Of(axis);
        return asked with
        {
            Stopping = PlantStopping.Of(plan, axis, reaction),
            FaultAcceleration = asked.FaultAcceleration > 0 ? asked.FaultAcceleration : PlantStopping.RunawayAcceleration(plant),
            Inertia = asked.Inertia ?? plant.Inertia,
        };
    }
}
