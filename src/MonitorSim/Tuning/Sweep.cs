using MonitorSim.Monitors;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>Measures a monitor again over cycles of its request, as if it never tripped: what tuning and evidence ask.</summary>
/// <param name="run">The monitor, with the requests that the replay saw.</param>
/// <param name="clock">The cycles of the replay.</param>
internal sealed class Sweep(MonitorRun run, CycleClock clock)
{
    /// <summary>Visits the cycles of one stretch of request.</summary>
    /// <param name="from">The cycle at which the request counts as come.</param>
    /// <param name="until">The cycle after the last.</param>
    /// <param name="delay">The arming delay, ns.</param>
    /// <param name="visit">Sees each cycle; returns whether to go on.</param>
    public void Over(int from, int until, long delay, Func<Cycle, Watch, bool> visit)
    {
        var watch = new Watch(run.NewMeasures(), delay);
        var choice = run.Track.From(from);
        foreach (var cycle in clock.Between(from, until))
        {
            watch.Step(cycle, choice(cycle.Index));
            if (!visit(cycle, watch)) return;
        }
    }

    /// <summary>Visits the cycles of one stretch of request up to the one from which on what a side compares depends on the sample alone.</summary>
    /// <param name="from">The cycle at which the request came.</param>
    /// <param name="until">The cycle after the last.</param>
    /// <param name="delay">The arming delay, ns.</param>
    /// <param name="side">The side's index.</param>
    /// <param name="visit">Sees each cycle.</param>
    /// <param name="isRowOpen">Whether a row of cycles goes on, which only visiting can end.</param>
    /// <returns>The cycles that were not visited; null if all were.</returns>
    public SettledStretch? UntilSettled(int from, int until, long delay, int side, Action<Cycle, Watch> visit, Func<bool> isRowOpen)
    {
        var watch = new Watch(run.NewMeasures(), delay);
        var hasLevels = run.Sides.Any(one => one.HasLevels);
        var choice = run.Track.From(from);
        foreach (var cycle in clock.Between(from, until))
        {
            watch.Step(cycle, choice(cycle.Index));
            if (!hasLevels && watch.IsWatching && watch.Measures.IsSettled && !isRowOpen()) return new(watch, side, clock, cycle.Index, until);
            visit(cycle, watch);
        }

        return null;
    }
}
