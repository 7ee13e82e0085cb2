using Fractions;
using MonitorSim.Channels;

namespace MonitorSim.Tuning;

/// <summary>The critical limit for every filter at once, as a falling staircase. One pass with a stack of rising measures: each measure that is
/// taken off it was the smallest of the longest stretch around it.</summary>
internal sealed class Frontier
{
    private readonly Stack<(long Start, Reading Reading, bool IsOpen)> _rising = new();
    private List<(long Filter, Reading Limit, long From, long Until)> _found = [];
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
        _found.Add((_last - start, reading, start, _last));
        if (_found.Count >= _compactAt) Compact();
        return start;
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
