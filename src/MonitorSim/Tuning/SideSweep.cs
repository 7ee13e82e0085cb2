using Fractions;
using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>What tuning wants to know of one side of a monitor (and of one level of it).</summary>
/// <param name="run">The monitor.</param>
/// <param name="side">The side's index.</param>
/// <param name="clock">The cycles.</param>
internal sealed class SideSweep(MonitorRun run, int side, CycleClock clock)
{
    private readonly Sweep _sweep = new(run, clock);
    private readonly Side _side = run.Sides[side];

    /// <summary>The critical limit of a level over one stretch, or over all stretches of request.</summary>
    public CriticalLimit Critical(int level, long filter, int cycles, (int From, int Until)? stretch = null)
    {
        var critical = new CriticalLimit(filter);
        foreach (var (from, until) in stretch is { } one ? [one] : run.Track.Stretches(cycles))
        {
            var settled = _sweep.UntilSettled(from, until, run.Delay, side, (cycle, watch) => Add(cycle, watch, level, critical.Add, critical.AddExceeded, critical.Break), () => critical.IsRowOpen);
            if (settled is not null) critical.Probe(settled);
            critical.Break();
        }

        return critical;
    }

    /// <summary>The critical limits of a level for all filters, over all stretches of request.</summary>
    public IReadOnlyList<(long Filter, Fraction Limit, long From, long Until)> Frontier(int level, int cycles)
    {
        var frontier = new Frontier();
        foreach (var (from, until) in run.Track.Stretches(cycles))
        {
            var settled = _sweep.UntilSettled(from, until, run.Delay, side, (cycle, watch) => Add(cycle, watch, level, frontier.Add, frontier.AddExceeded, frontier.Break), () => frontier.IsRowOpen);
            if (settled is not null) frontier.Add(settled);
            frontier.Break();
        }

        return frontier.Steps();
    }

    /// <summary>How long the longest row of exceeding cycles lasts, ns; null without one. Any longer filter does not trip.</summary>
    public long? LongestRun(int cycles, (int From, int Until)? stretch = null)
    {
        long? longest = null;
        var rows = new ExceedingRows(run, side, clock);
        foreach (var (from, until) in stretch is { } one ? [one] : run.Track.Stretches(cycles))
            rows.In(from, until, run.Delay, (first, last) => longest = Math.Max(longest ?? 0, clock.Lasting(first, last)));
        return longest;
    }

    private delegate void AddReading(long time, in Reading reading);

    private void Add(in Cycle cycle, Watch watch, int level, AddReading add, Action<long> addExceeded, Action end)
    {
        ref readonly var comparison = ref watch.Comparisons[side];
        if (!comparison.IsMade) end();
        else if (comparison.Level == level) add(cycle.Time, comparison.Reading);
        else if (comparison.IsExceeded(_side)) addExceeded(cycle.Time);
        else end();
    }
}
