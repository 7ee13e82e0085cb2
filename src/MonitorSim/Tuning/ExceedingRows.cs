using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>The rows of cycles in which one side of a monitor exceeds, as if it never tripped.</summary>
/// <param name="run">The monitor.</param>
/// <param name="side">The side's index.</param>
/// <param name="clock">The cycles.</param>
internal sealed class ExceedingRows(MonitorRun run, int side, CycleClock clock)
{
    private readonly Sweep _sweep = new(run, clock);

    /// <summary>Visits the rows of one stretch of request, in order.</summary>
    /// <param name="from">The cycle at which the request came.</param>
    /// <param name="until">The cycle after the last.</param>
    /// <param name="delay">The arming delay, ns.</param>
    /// <param name="visit">Takes the index of a row's first cycle and of its last one.</param>
    public void In(int from, int until, long delay, Action<int, int> visit)
    {
        int? first = null;
        var last = from;
        var own = run.Sides[side];
        var settled = _sweep.UntilSettled(from, until, delay, side, (cycle, watch) => See(cycle.Index, watch.Comparisons[side].IsExceeded(own)), () => first is not null);
        for (var n = settled?.From ?? until; n < until; n++)
        {
            if (first is null && (n = settled!.FirstAbove(own.Limits[0].Value, n)) >= until) break;
            See(n, settled!.TryMeasure(clock.Seeing(n), out var reading) && Reading.Compare(reading, own.Limits[0]) > 0);
        }

        See(until, isExceeded: false);

        void See(int cycle, bool isExceeded)
        {
            if (isExceeded) (first, last) = (first ?? cycle, cycle);
            else if (first is { } start)
            {
                first = null;
                visit(start, last);
            }
        }
    }
}
