using MonitorSim.Channels;
using MonitorSim.Monitors;

namespace MonitorSim.Tuning;

/// <summary>The smallest limit that does not trip at one filter: the largest, over all stretches that last as long as the filter, of the
/// smallest measure in the stretch. One pass; a queue of falling candidates keeps the smallest of the present stretch at its head.</summary>
/// <param name="filter">The filter, ns.</param>
internal sealed class CriticalLimit(long filter)
{
    // Times of the present row whose stretch to now is still too short, and candidates for the smallest measure, rising.
    private readonly Queue<long> _row = new();
    private readonly LinkedList<(long Time, Reading Reading)> _candidates = new();
    private readonly List<Reading> _smallestUntilLast = [];
    private long? _start;
    // A rank whose measure is not above the best so far: doubles that rule out most cycles without a measure made.
    private double _beaten = double.NegativeInfinity;

    /// <summary>The critical limit so far; null without a stretch that lasts.</summary>
    public Reading? Value { get; private set; }

    /// <summary>The first cycle at which a limit just below it would trip, ns.</summary>
    public long At { get; private set; }

    /// <summary>Where the deciding stretch begins, ns.</summary>
    public long From { get; private set; }

    /// <summary>Adds the measure of the next cycle of the row.</summary>
    public void Add(long time, in Reading reading) => Add(time, reading, isOpen: false);

    /// <summary>Adds a cycle that exceeds whatever the limit is: another level, exceeded by itself.</summary>
    public void AddExceeded(long time) => Add(time, default, isOpen: true);

    /// <summary>Ends the row: a cycle at which nothing is compared.</summary>
    public void Break()
    {
        _row.Clear();
        _candidates.Clear();
        _start = null;
    }

    /// <summary>Whether the cycle before belongs to the present row.</summary>
    public bool IsRowOpen => _row.Count > 0 || _start is not null;

    /// <summary>Adds a row that can be asked in any order. A stretch that holds a cycle with a measure not above the best so far cannot better it, so each
    /// stretch is looked at from its end, and the first such cycle rules out all stretches that hold it.</summary>
    public void Probe(SettledStretch row)
    {
        if (filter == 0) ProbeCycles(row);
        else ProbeStretches(row);
    }

    private void ProbeCycles(SettledStretch row)
    {
        for (var n = row.From; n < row.Until; n++)
        {
            if (Value is { } best && (n = row.FirstAbove(best.Value - best.Error, n)) == row.Until) return;
            if (!IsBetter(row, n, out var reading)) continue;
            var time = row.Clock.TimeOf(n);
            (Value, At, From) = (reading, time, time);
        }
    }

    private void ProbeStretches(SettledStretch row)
    {
        var (clock, first) = (row.Clock, row.From);
        var last = first;
        while (first < row.Until && (last = clock.FirstAt(clock.TimeOf(first) + filter, last)) < row.Until)
        {
            // The shortest stretch up to its last cycle that lasts.
            var start = clock.LastAt(clock.TimeOf(last) - filter, first);
            _smallestUntilLast.Clear();
            var n = last;
            while (n >= start && IsBetter(row, n, out var reading))
            {
                _smallestUntilLast.Add(_smallestUntilLast.Count == 0 ? reading : Reading.Smaller(reading, _smallestUntilLast[^1]));
                n--;
            }

            if (n >= start) first = n + 1;
            else
            {
                (Value, At, From) = (_smallestUntilLast[^1], clock.TimeOf(last), clock.TimeOf(start));
                _beaten = row.SmallestRank(start, last);
                first = Follow(row, start, last);
            }
        }
    }

    /// <summary>Goes on cycle by cycle after a better stretch, as the next one may be better still: its smallest measure is that of what it has in common with
    /// the first one or of what came since.</summary>
    /// <returns>The first cycle at which a stretch not yet looked at may begin.</returns>
    private int Follow(SettledStretch row, int start, int last)
    {
        var clock = row.Clock;
        Reading? since = null;
        for (var n = last + 1; n < row.Until; n++)
        {
            if (!IsBetter(row, n, out var reading)) return n + 1;
            since = since is { } least ? Reading.Smaller(least, reading) : reading;
            start = clock.LastAt(clock.TimeOf(n) - filter, start);
            if (start > last) return start;
            var smallest = Reading.Smaller(_smallestUntilLast[last - start], since.Value);
            if (Reading.Compare(smallest, Value!.Value) > 0) (Value, At, From) = (smallest, clock.TimeOf(n), clock.TimeOf(start));
        }

        return row.Until;
    }

    private bool IsBetter(SettledStretch row, int cycle, out Reading reading)
    {
        reading = default;
        return row.MayRankAbove(_beaten, cycle) && row.TryMeasure(row.Clock.Seeing(cycle), out reading) && !(Value is { } best && Reading.Compare(reading, best) <= 0);
    }

    private void Add(long time, in Reading reading, bool isOpen)
    {
        _row.Enqueue(time);
        if (!isOpen)
        {
            while (_candidates.Last is { } last && Reading.Compare(last.Value.Reading, reading) >= 0) _candidates.RemoveLast();
            _candidates.AddLast((time, reading));
        }

        // The shortest stretch up to now that lasts begins at the latest cycle that is old enough.
        while (_row.TryPeek(out var oldest) && time - oldest >= filter) _start = _row.Dequeue();
        if (_start is not { } start) return;

        // The latest measure stays, however old: where only cycles of other levels came after it, the stretch begins at it.
        while (_candidates.Count > 1 && _candidates.First!.Value.Time < start) _candidates.RemoveFirst();
        if (_candidates.First is not { } smallest) return;
        if (Value is { } best && Reading.Compare(smallest.Value.Reading, best) <= 0) return;
        (Value, At, From) = (smallest.Value.Reading, time, Math.Min(start, smallest.Value.Time));
    }
}
