using MonitorSim.Channels;

namespace MonitorSim.Tuning;

/// <summary>The steps of a frontier as they are found: filters rising, limits falling. What a longer stretch of at least the same limit beats is no step.</summary>
internal sealed class Staircase
{
    private readonly List<Step> _steps = [];

    public IReadOnlyList<Step> Steps => _steps;

    /// <summary>Adds a stretch; of equal ones the first added stays.</summary>
    /// <param name="filter">How long it lasts, ns: the longest filter that it trips.</param>
    /// <param name="limit">Its smallest measure.</param>
    /// <param name="from">When it begins, ns.</param>
    /// <param name="until">When it ends, ns.</param>
    public void Add(long filter, in Reading limit, long from, long until)
    {
        var at = FirstAsLong(filter);
        if (at < _steps.Count && Reading.Compare(_steps[at].Limit, limit) >= 0) return;
        var end = at < _steps.Count && _steps[at].Filter == filter ? at + 1 : at;
        while (at > 0 && Reading.Compare(_steps[at - 1].Limit, limit) <= 0) at--;
        _steps.RemoveRange(at, end - at);
        _steps.Insert(at, new(filter, limit, from, until));
    }

    private int FirstAsLong(long filter)
    {
        int low = 0, high = _steps.Count;
        while (low < high)
        {
            var middle = low + (high - low) / 2;
            if (_steps[middle].Filter < filter) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    /// <summary>A step: for filters up to this one, and longer than that of the step before, the limit is the critical one. A class, as steps are moved about.</summary>
    internal sealed record Step(long Filter, Reading Limit, long From, long Until);
}
