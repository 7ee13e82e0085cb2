using Fractions;
using MonitorSim.Channels;

namespace MonitorSim.Tuning;

/// <summary>The critical limit for every filter at once, as a falling staircase. One pass with a stack of rising measures: each measure that is
/// taken off it was the smallest of the longest stretch around it.</summary>
internal sealed class Frontier
{
    private readonly Stack<(long Start, Reading Reading, bool IsOpen)> _rising = new();
    private readonly Staircase _found = new();
    private readonly LongerStretches _longer = new();
    private long _last;

    /// <summary>Adds the measure of the next cycle of the row.</summary>
    public void Add(long time, in Reading reading)
    {
        var start = time;
        while (_rising.TryPeek(out var top) && (top.IsOpen || Reading.Compare(top.Reading, reading) >= 0)) start = TakeOff();
        _rising.Push((start, reading, false));
        _last = time;
    }

    /// <summary>Adds a cycle that exceeds whatever the limit is: another level, exceeded by itself.</summary>
    public void AddExceeded(long time)
    {
        if (!_rising.TryPeek(out var top) || !top.IsOpen) _rising.Push((time, default, true));
        _last = time;
    }

    /// <summary>Adds a row that can be asked in any order; no row may be open.</summary>
    public void Add(SettledStretch row)
    {
        if (row.Ranking is { } ranking)
        {
            new RankedRow(row, ranking).Frontier(_found);
            return;
        }

        foreach (var cycle in row.Clock.Between(row.From, row.Until))
        {
            if (row.TryMeasure(cycle, out var reading)) Add(cycle.Time, reading);
            else Break();
        }

        Break();
    }

    /// <summary>Whether the cycle before belongs to the present row.</summary>
    public bool IsRowOpen => _rising.Count > 0;

    /// <summary>Ends the row: a cycle at which nothing is compared.</summary>
    public void Break()
    {
        while (_rising.Count > 0) TakeOff();
    }

    /// <summary>The staircase: filters rising, limits falling; for filters up to and including a step's, and longer than the one before, its limit
    /// is the critical one.</summary>
    public IReadOnlyList<(long Filter, Fraction Limit, long From, long Until)> Steps()
    {
        Break();
        return [.. _found.Steps.Select(step => (step.Filter, step.Limit.Exact(), step.From, step.Until))];
    }

    private long TakeOff()
    {
        var (start, reading, isOpen) = _rising.Pop();
        if (isOpen) return start;
        var length = _last - start;
        if (_longer.Beat(length, reading.Value + reading.Error)) return start;
        _longer.Add(length, reading.Value - reading.Error);
        _found.Add(length, reading, start, _last);
        return start;
    }
}
