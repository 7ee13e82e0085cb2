using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>All families of branches of a plan: of monitors, of outputs, of stops and of the reactor.</summary>
internal sealed class Families(Bench bench)
{
    private readonly Harvest _harvest = new();

    public Harvest Make()
    {
        foreach (var (name, axis) in bench.Plan.Axes.OrderBy(axis => axis.Key, StringComparer.Ordinal))
        {
            foreach (var monitor in axis.Monitors) Monitor(name, axis, monitor);
            foreach (var (subject, lever) in AxisChains.TwoChannels(bench, name, negative: false)) Chain(subject, lever);
            foreach (var (subject, lever) in AxisChains.TwoChannels(bench, name, negative: true)) MirrorFamily.Make(_harvest, new MirrorFamily(bench, subject, lever));
            Stops(name, axis.Stops);
        }

        return _harvest;
    }

    private void Monitor(string axis, AxisPlan plan, MonitorPlan monitor)
    {
        var preludes = new Preludes(bench);
        var ways = AxisChains.Of(bench, axis, monitor, negative: false).Select(chain => (Subjects: preludes.Of(chain.Subject, monitor, chain.Lever.Level), chain.Lever)).ToList();
        foreach (var (subjects, lever) in ways) ChainFamily.Make(_harvest, [.. subjects.Select(subject => new ChainFamily(bench, subject, lever))]);
        foreach (var (subject, lever) in AxisChains.Of(bench, axis, monitor, negative: true))
            MirrorFamily.Make(_harvest, [.. preludes.Of(subject, monitor, lever.Level).Select(way => new MirrorFamily(bench, way, lever))]);
        foreach (var edge in OutputEdge.Of(plan, monitor)) OutputFamily.Make(_harvest, [.. preludes.Callings(monitor).Select(calling => new OutputFamily(bench, axis, monitor, edge, calling))]);
        if (ways.Count == 0) return;
        var chains = ways.Select(way => (Subject: way.Subjects[0], way.Lever)).ToList();
        var first = chains[0].Subject;
        if (monitor is Sls sls) Speeds(axis, sls, chains);
        if (monitor is Sdi sdi) new SdiFamily(bench, first, sdi).Make(_harvest);
        if (monitor is Sli sli) new SliFamily(bench, first, sli).Make(_harvest);
        Seconds(plan, monitor, chains);
        Reactions(axis, monitor.Name);
    }

    private void Speeds(string axis, Sls sls, List<(Subject Subject, Lever Lever)> chains)
    {
        if (sls.Levels is not null) new LevelFamily(bench, axis, sls).Make(_harvest);
        if (sls.Approach is not { } approach) return;
        foreach (var (subject, lever) in chains)
            new ApproachFamily(bench, subject, (lever.Level is { } level ? sls.Levels![level].Limit : sls.Limit!).Exact, lever.Level, approach).Make(_harvest);
    }

    /// <summary>Of magnitudes only: signed limits heed the first recording alone.</summary>
    private void Seconds(AxisPlan plan, MonitorPlan monitor, List<(Subject Subject, Lever Lever)> chains)
    {
        if (!Levers.HasMirror(monitor) || monitor is Sli or Sos or Sls { Levels: not null }) return;
        foreach (var (subject, lever) in chains)
        {
            if (lever is not ChannelLever channel || channel.Unreachable is not null) continue;
            if (ChannelChecks.Of(plan).First(one => one.Kind == channel.Kind).Plan?.Second is null) continue;
            new SecondFamily(bench, subject, lever, channel.Kind, channel.Limit, channel.IsUpperLimit).Make(_harvest);
        }
    }

    private void Chain(Subject subject, Lever lever)
    {
        ChainFamily.Make(_harvest, new ChainFamily(bench, subject, lever));
        Reactions(subject.Axis, subject.Monitor);
    }

    private void Reactions(string axis, string monitor)
    {
        var ways = TrippedWay.All(bench, axis, monitor);
        new ReactionFamily(bench, axis, ways).Make(_harvest);
        if (bench.Plan.Acknowledge is { } acknowledge) AcknowledgeFamily.Make(_harvest, bench, ways, acknowledge);
    }

    private void Stops(string axis, StopsPlan stops)
    {
        new StopFamily(bench, axis).Make(_harvest);
        foreach (var (name, stop) in new[] { ("SS1", stops.Ss1), ("SS2", stops.Ss2) })
        {
            if (stop is null) continue;
            new StopEndFamily(bench, axis, name, stop).Make(_harvest);
            if (stop.Variant == StopVariant.Ramp) new RampFamily(bench, axis, name, stop).Make(_harvest);
        }

        foreach (var name in new[] { "STO", "SS1", "SS2", "SOS" }) new StopRequestFamily(bench, axis, name).Make(_harvest);
    }
}
