using System.Globalization;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>What the reader of a result should know: pulses that no cycle saw, and rates that were derived.</summary>
internal static class Warnings
{
    public static IEnumerable<string> Of(Plan plan, Inputs inputs, Engine engine)
    {
        foreach (var (name, axis) in plan.Axes)
        {
            if (axis.Channels.Velocity is null && axis.Channels.Position is not null)
                yield return $"{name}.velocity is not recorded: derived from position by the difference of neighbouring samples";
            if (axis.Channels.Acceleration is null && engine.Channels[name].Velocity is not null)
                yield return $"{name}.acceleration is not recorded: derived from velocity by the difference of neighbouring samples";
        }

        if (plan.Cycle is null) yield break;
        var seen = new HashSet<int>();
        foreach (var cycle in engine.Clock.Between(0, engine.Done)) seen.Add(cycle.Sample);
        foreach (var (name, track) in inputs.Signals.OrderBy(signal => signal.Key, StringComparer.Ordinal))
        {
            for (var e = 0; e + 1 < track.Edges.Count; e++)
            {
                if (Enumerable.Range(track.Edges[e], track.Edges[e + 1] - track.Edges[e]).Any(seen.Contains)) continue;
                yield return $"signal {name}: no cycle sees the pulse at {Seconds.Of(inputs.Times[track.Edges[e]]).ToString(CultureInfo.InvariantCulture)} s";
            }
        }
    }
}
