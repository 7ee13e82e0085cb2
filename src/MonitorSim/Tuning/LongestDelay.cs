using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>The longest arming delay with which one side still trips within a stretch of request.</summary>
/// <remarks>A delay matters only through the first watching cycle, so the candidates are the cycles of the stretch. Where no reference
/// remembers the start, the last start that trips lies in the last run that lasts; else every start is tried, the last one first.</remarks>
/// <param name="run">The monitor.</param>
/// <param name="side">The side's index.</param>
/// <param name="clock">The cycles.</param>
internal sealed class LongestDelay(MonitorRun run, int side, CycleClock clock)
{
    private readonly Sweep _sweep = new(run, clock);
    private readonly Side _side = run.Sides[side];
    private readonly long _filter = run.Filter;

    /// <summary>The delay, ns; null where even the last start trips, or (with <paramref name="trips"/> false) where none does.</summary>
    public long? In(int from, int until, out bool trips)
    {
        var (requestedAt, lastAt) = (clock.At(from).Time, clock.Between(until - 1, until).Single().Time);
        var delay = run.NewMeasures().DelayMatters(side) switch
        {
            DelayMeaning.Start => LastStart(from, until) - requestedAt,
            DelayMeaning.Reference => LastReference(from, until) - requestedAt,
            DelayMeaning.Throughout => LastThroughout(from, until, requestedAt),
            _ => throw new InvalidOperationException("an unknown meaning of a delay"),
        };
        trips = delay is not null;
        return delay >= lastAt - requestedAt ? null : delay;
    }

    /// <summary>Only the first watching cycle counts, and nothing remembers it.</summary>
    private long? LastStart(int from, int until)
    {
        long? latest = null;
        new ExceedingRows(run, side, clock).In(from, until, delay: 0, (first, last) =>
        {
            if (clock.Lasting(first, last) >= _filter) latest = clock.TimeOf(clock.LastAt(clock.TimeOf(last) - _filter, first));
        });
        return latest;
    }

    /// <summary>References remember where watching began.</summary>
    private long? LastReference(int from, int until)
    {
        // While all positions from a start on lie within the limit of each other, no reference among them can be left by more.
        var position = run.NewMeasures().Reference!;
        int highest = -1, lowest = -1;
        for (var start = until - 1; start >= from; start--)
        {
            var cycle = clock.Between(start, start + 1).Single();
            if (!position.IsPresent(cycle.Sample)) continue;
            if (highest < 0) highest = lowest = cycle.Sample;
            var here = Reading.Of(position, cycle.Sample);
            if (Reading.Compare(here, Reading.Of(position, highest)) > 0) highest = cycle.Sample;
            if (Reading.Compare(here, Reading.Of(position, lowest)) < 0) lowest = cycle.Sample;
            var spread = Reading.Of(position, highest).Minus(position, lowest);
            if (Reading.Compare(spread, _side.Limits[0]) > 0 && Trips(start, until, 0)) return cycle.Time;
        }

        return null;
    }

    /// <summary>The delay also counts at every change of level, and what is compared while arming.</summary>
    private long? LastThroughout(int from, int until, long requestedAt)
    {
        // What is compared while arming only grows with the delay; what is compared while watching only shrinks, from what no delay leaves.
        var isArming = _side.IsComparedWhileArming;
        var bound = isArming ? long.MaxValue : LastStart(from, until) - requestedAt;
        var choice = run.Track.From(from);
        var changes = new List<long> { requestedAt };
        var before = choice(from);
        var times = new List<long>();
        foreach (var cycle in clock.Between(from, until))
        {
            times.Add(cycle.Time);
            var now = choice(cycle.Index);
            if (now != before) changes.Add(cycle.Time);
            before = now;
        }

        foreach (var delay in changes.SelectMany(change => times.Where(time => time >= change).Select(time => time - change)).Where(delay => delay <= bound).Distinct().OrderDescending())
            if (Trips(from, until, delay)) return delay;
        return null;
    }

    private bool Trips(int from, int until, long delay)
    {
        var trips = false;
        long? since = null;
        _sweep.Over(from, until, delay, (cycle, watch) =>
        {
            since = watch.Comparisons[side].IsExceeded(_side) ? since ?? cycle.Time : null;
            trips = since is { } start && cycle.Time - start >= _filter;
            return !trips;
        });
        return trips;
    }
}
