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
    private long? _start;

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
        while (_candidates.First is { } first && first.Value.Time < start) _candidates.RemoveFirst();
        if (_candidates.First is not { } smallest) return;
        if (Value is { } best && Reading.Compare(smallest.Value.Reading, best) <= 0) return;
        (Value, At, From) = (smallest.Value.Reading, time, start);
    }
}
