using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Every chain of an axis that can trip, with the lever of each side: monitors, then pairs of recordings.</summary>
internal static class AxisChains
{
    public static IEnumerable<(Subject Subject, Lever Lever)> Of(Bench bench, string axis, bool negative) =>
        bench.Plan.Axes[axis].Monitors.SelectMany(monitor => Of(bench, axis, monitor, negative)).Concat(TwoChannels(bench, axis, negative));

    /// <summary>The chains of a monitor; none where it cannot trip, or where its magnitudes have no other sign.</summary>
    public static IEnumerable<(Subject Subject, Lever Lever)> Of(Bench bench, string axis, MonitorPlan monitor, bool negative)
    {
        var reaction = monitor.Reaction ?? monitor.DefaultReaction;
        if (!monitor.CanTrip(reaction) || (negative && !Levers.HasMirror(monitor))) return [];
        return new Levers(bench, axis).Of(monitor, negative).Select(lever => (new Subject(axis, monitor.Name, new SignalCalling(bench.Requests.Of(monitor, lever.Level)),
            bench.Clock.Cycles(monitor.Delay), bench.Clock.Cycles(monitor.Filter), reaction), lever));
    }

    public static IEnumerable<(Subject Subject, Lever Lever)> TwoChannels(Bench bench, string axis, bool negative)
    {
        foreach (var (kind, channel) in ChannelChecks.Of(bench.Plan.Axes[axis]))
        {
            if (channel?.Second is not { } second) continue;
            var always = new SignalCalling(new(bench.Requests.Quiet, null, ""));
            yield return (new($"{axis}", $"{Choice.Name(kind)} two channels", always, 0, bench.Clock.Cycles(second.Time), second.Reaction ?? Reaction.Stop0),
                new SpreadLever(bench, axis, kind, second.Tolerance.ExactDifference, negative));
        }
    }
}
