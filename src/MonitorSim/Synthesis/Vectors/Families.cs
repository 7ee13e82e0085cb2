using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>All families of branches of a plan.</summary>
internal sealed class Families(Bench bench)
{
    public Harvest Make()
    {
        var harvest = new Harvest();
        foreach (var (name, axis) in bench.Plan.Axes.OrderBy(axis => axis.Key, StringComparer.Ordinal))
        {
            var levers = new Levers(bench, name);
            foreach (var monitor in axis.Monitors) Chains(harvest, name, monitor, levers);
            TwoChannels(harvest, name, axis);
        }

        return harvest;
    }

    private void Chains(Harvest harvest, string axis, MonitorPlan monitor, Levers levers)
    {
        var reaction = monitor.Reaction ?? monitor.DefaultReaction;
        if (!monitor.CanTrip(reaction)) return;
        foreach (var lever in levers.Of(monitor, negative: false)) new ChainFamily(bench, Subject(lever), lever).Make(harvest);
        if (!Levers.HasMirror(monitor)) return;
        foreach (var lever in levers.Of(monitor, negative: true)) new MirrorFamily(bench, Subject(lever), lever).Make(harvest);

        Subject Subject(Lever lever) => new(axis, monitor.Name, bench.Requests.Of(monitor, lever.Level), bench.Clock.Cycles(monitor.Delay), bench.Clock.Cycles(monitor.Filter), reaction);
    }

    private void TwoChannels(Harvest harvest, string axis, AxisPlan plan)
    {
        foreach (var (kind, channel) in ChannelChecks.Of(plan))
        {
            if (channel?.Second is not { } second) continue;
            var subject = new Subject(axis, $"{Choice.Name(kind)} two channels", new(bench.Requests.Quiet, null, ""), 0, bench.Clock.Cycles(second.Time), second.Reaction ?? Reaction.Stop0);
            new ChainFamily(bench, subject, new SpreadLever(bench, axis, kind, second.Tolerance.ExactDifference, negative: false)).Make(harvest);
            new MirrorFamily(bench, subject, new SpreadLever(bench, axis, kind, second.Tolerance.ExactDifference, negative: true)).Make(harvest);
        }
    }
}
