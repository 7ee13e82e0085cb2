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
        VisitLevel(level, cycles, stretch, critical.Add, critical.AddExceeded, critical.Break);
        return critical;
    }

    /// <summary>The critical limits of a level for all filters, over all stretches of request.</summary>
    public IReadOnlyList<(long Filter, Fraction Limit, long From, long Until)> Frontier(int level, int cycles)
    {
        var frontier = new Frontier();
        VisitLevel(level, cycles, null, frontier.Add, frontier.AddExceeded, frontier.Break);
        return frontier.Steps();
    }

    /// <summary>How long the longest row of exceeding cycles lasts, ns; null without one. Any longer filter does not trip.</summary>
    public long? LongestRun(int cycles, (int From, int Until)? stretch = null)
    {
        long? longest = null, since = null;
        Visit(cycles, stretch, (cycle, watch) =>
        {
            since = watch.Comparisons[side].IsExceeded(_side) ? since ?? cycle.Time : null;
            if (since is { } start && !(cycle.Time - start <= longest)) longest = cycle.Time - start;
            return true;
        }, () => since = null);
        return longest;
    }

    private delegate void AddReading(long time, in Reading reading);

    private void VisitLevel(int level, int cycles, (int From, int Until)? stretch, AddReading add, Action<long> addExceeded, Action end) =>
        Visit(cycles, stretch, (cycle, watch) =>
        {
            ref readonly var comparison = ref watch.Comparisons[side];
            if (!comparison.IsMade) end();
            else if (comparison.Level == level) add(cycle.Time, comparison.Reading);
            else if (comparison.IsExceeded(_side)) addExceeded(cycle.Time);
            else end();
            return true;
        }, end);

    private void Visit(int cycles, (int From, int Until)? stretch, Func<Cycle, Watch, bool> visit, Action end)
    {
        if (stretch is { } one) _sweep.Over(one.From, one.Until, run.Delay, visit);
        else _sweep.OverAll(cycles, visit, end);
    }
}
