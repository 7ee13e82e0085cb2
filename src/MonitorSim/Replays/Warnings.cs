using System.Globalization;
using MonitorSim.Estimators;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Replays;

/// <summary>What the reader of a result should know: pulses that no cycle saw, and rates that were derived and matter.</summary>
internal static class Warnings
{
    public static IEnumerable<string> Of(Plan plan, Inputs inputs, Engine engine)
    {
        // In an order of their own: that of the plan never changes a result.
        foreach (var (name, axis) in plan.Axes.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            foreach (var (what, from, channel, source) in new[]
            {
                ("velocity", "position", axis.Channels.Velocity, engine.Channels[name].Travel),
                ("acceleration", "velocity", axis.Channels.Acceleration, engine.Channels[name].Velocity),
            })
            {
                if (source is null || channel?.Column is not null || inputs.Times.Count < 2) continue;
                if (what == "acceleration" && channel is null && !NeedsAcceleration(axis)) continue;
                var estimator = channel?.Estimator ?? new EstimatorPlan();
                var figures = EstimatorFigures.Of(estimator, MedianStep(inputs));
                var how = channel is null ? "is not recorded: derived" : "is derived";
                yield return string.Create(CultureInfo.InvariantCulture,
                    $"{name}.{what} {how} from {from} by {Choice.Name(estimator.Name)}: {figures.Delay * 1e3:0.###} ms late, white noise times {figures.NoiseGain:0.###} 1/s");
            }
        }

        foreach (var fault in engine.Motions.Faults) yield return $"injected, not recorded: {fault.Text}";
        foreach (var (name, axis) in engine.Motions.Axes)
        {
            if (axis.LeftAt is { } left)
                yield return $"{name} follows its plant from {Seconds.Of(left).ToString(CultureInfo.InvariantCulture)} s on: what comes after that is simulated, not recorded";
        }

        if (plan.Cycle is null) yield break;
        foreach (var (name, track) in inputs.Signals.OrderBy(signal => signal.Key, StringComparer.Ordinal))
        {
            for (var e = 0; e + 1 < track.Edges.Count; e++)
            {
                var cycle = engine.Clock.FirstSeeing(track.Edges[e], 0);
                if (cycle < engine.Done && engine.Clock.Seeing(cycle).Sample < track.Edges[e + 1]) continue;
                yield return $"signal {name}: no cycle sees the pulse at {Seconds.Of(inputs.Times[track.Edges[e]]).ToString(CultureInfo.InvariantCulture)} s";
            }
        }
    }

    private static bool NeedsAcceleration(AxisPlan axis) =>
        axis.Monitors.Any(monitor => PlanType.Of(monitor.GetType()).Needs.Contains(Kind.Acceleration))
        || axis.Stops.Ss1?.Variant == StopVariant.Deceleration || axis.Stops.Ss2?.Variant == StopVariant.Deceleration;

    private static long MedianStep(Inputs inputs) => Math.Max(1, (long)(Sampling.Of(inputs.Times.Span)?.Median ?? 1));
}
