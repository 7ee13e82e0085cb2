using MonitorSim.Monitors;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Envelopes;

/// <summary>A stop from a stated speed.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="From">The limit whose speed it is, or <c>speed</c> where the speed was given.</param>
/// <param name="Reaction">Which stop.</param>
/// <param name="Speed">With its sign, as written.</param>
/// <param name="Result">How it came out.</param>
public sealed record LimitStop(string Axis, string From, Reaction Reaction, Quantity Speed, StopResult Result);

/// <summary>Stops from the speeds that a plan allows: what is left to happen when a limit is just reached.</summary>
/// <remarks>Without faults the stop is demanded at that speed and acts a reaction delay later. With faults they begin there, and the limit has to find them first.
/// Both directions are taken where a load makes them differ.</remarks>
public static class LimitStops
{
    /// <summary>The stops of every speed limit of an axis (SLS with its levels, SSR) that has a reaction.</summary>
    /// <param name="plan">The plan; the axis needs a plant.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="faults">What goes wrong at that speed.</param>
    /// <param name="horizon">How long each is followed, s.</param>
    /// <exception cref="InputException">The axis has no plant, or a stop that it does not define.</exception>
    public static IReadOnlyList<LimitStop> OfLimits(Plan plan, string axis, IReadOnlyList<MachineFault> faults, double horizon = Stop.Horizon)
    {
        var of = plan.Axes[axis];
        var stops = new List<LimitStop>();
        foreach (var monitor in of.Monitors)
        {
            var reaction = monitor.Reaction ?? monitor.DefaultReaction;
            if (reaction == Reaction.None) continue;
            foreach (var (name, limit) in SpeedLimits(monitor))
                stops.AddRange(Of(plan, axis, name, reaction, limit, monitor.Filter?.Si ?? 0, faults, horizon));
        }

        return stops;
    }

    /// <summary>Every stop that an axis defines, from a speed.</summary>
    /// <inheritdoc cref="OfLimits"/>
    /// <param name="plan">The plan.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="speed">The speed; without a sign both directions, where a load makes them differ.</param>
    /// <param name="faults">What goes wrong.</param>
    /// <param name="horizon">How long each is followed, s.</param>
    public static IReadOnlyList<LimitStop> OfSpeed(Plan plan, string axis, Quantity speed, IReadOnlyList<MachineFault> faults, double horizon = Stop.Horizon)
    {
        var stops = plan.Axes[axis].Stops;
        var defined = new[] { (stops.Sto is not null, Reaction.Stop0), (stops.Ss1 is not null, Reaction.Stop1), (stops.Ss2 is not null, Reaction.Stop2) };
        return [.. defined.Where(stop => stop.Item1).SelectMany(stop => Of(plan, axis, "speed", stop.Item2, speed, 0, faults, horizon))];
    }

    private static IEnumerable<(string Name, Quantity Limit)> SpeedLimits(MonitorPlan monitor) => monitor switch
    {
        Sls { Levels: { } levels } sls => levels.Select((level, index) => ($"{sls.Name} (level {index})", level.Limit)),
        Sls { Limit: { } limit } sls => [(sls.Name, limit)],
        Ssr { Upper: { } upper } ssr => [(ssr.Name, upper)],
        _ => [],
    };

    private static IEnumerable<LimitStop> Of(Plan plan, string axis, string from, Reaction reaction, Quantity speed, double filter, IReadOnlyList<MachineFault> faults, double horizon)
    {
        var of = plan.Axes[axis];
        var plant = Plant.Of(of);
        var bothWays = plant.Load != 0 && speed.Number > 0;
        foreach (var signed in bothWays ? new[] { speed, new Quantity(-speed.Number, speed.Unit) } : [speed])
        {
            var velocity = signed.Si;
            var program = StopProgram.Of(plan, of, reaction);
            var limit = new Watcher(from, "upper", state => Math.Abs(state.Velocity), Math.Abs(velocity))
            {
                Filter = filter, Response = program.Response, Reaction = reaction, Unit = of.Motion == AxisMotion.Rotary ? "rad/s" : "m/s",
            };
            var run = new StopRun(plant, stop => StopProgram.Of(plan, of, stop), MachineCondition.Of(faults, plant, velocity), faults.Count == 0 ? [] : [limit], horizon);
            yield return new(axis, from, reaction, signed, run.From(new(0, 0, velocity, 0, 0), faults.Count == 0 ? reaction : Reaction.None));
        }
    }
}
