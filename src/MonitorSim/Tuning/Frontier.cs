using Fractions;
using MonitorSim.Channels;

namespace MonitorSim.Tuning;

/// <summary>The critical limit for every filter at once, as a falling staircase. One pass with a stack of rising measures: each measure that is
/// taken off it was the smallest of the longest stretch around it.</summary>
internal sealed class Frontier
{
    private readonly Stack<(long Start, Reading Reading, bool IsOpen)> _rising = new();
    private List<(long Filter, Reading Limit, long From, long Until)> _found = [];
    private readonly LongerStretches _longer = new();
    private long _last;
    private int _compactAt = 1024;

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
            new RankedRow(row, ranking).Frontier(Found);
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
        Compact();
        return [.. _found.Select(step => (step.Filter, step.Limit.Exact(), step.From, step.Until))];
    }

    private long TakeOff()
    {
        var (start, reading, isOpen) = _rising.Pop();
        if (isOpen) return start;
        var length = _last - start;
        if (_longer.Beat(length, reading.Value + reading.Error)) return start;
        _longer.Add(length, reading.Value - reading.Error);
        Found(length, reading, start, _last);
        return start;
    }

    private void Found(long length, in Reading reading, long from, long until)
    {
        _found.Add((length, reading, from, until));
        if (_found.Count >= _compactAt) Compact();
    }

    private void Compact()
    {
        // From the longest filter down, only a higher limit is a step; of equal ones the first in time stays.
        var steps = new List<(long Filter, Reading Limit, long From, long Until)>();
        foreach (var step in _found.OrderByDescending(step => step.Filter).ThenByDescending(step => step.Limit.Value).ThenBy(step => step.From))
        {
            if (steps.Count > 0 && Reading.Compare(step.Limit, steps[^1].Limit) <= 0) continue;
            if (steps.Count > 0 && steps[^1].Filter == step.Filter) steps.RemoveAt(steps.Count - 1);
            steps.Add(step);
        }

        steps.Reverse();
        _found = steps;
        _compactAt = Math.Max(1024, 2 * steps.Count);
    }
}
