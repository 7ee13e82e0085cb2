using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Replays;

/// <summary>Steps in time that are too long: more than the plan's gap, else more than 5 times the median step.</summary>
internal sealed class Gaps
{
    private readonly List<int> _first = [];
    private readonly long? _longest;

    /// <summary>Gaps that are found as samples come; without a <c>gap</c> in the plan there are none.</summary>
    public Gaps(Plan plan) => _longest = plan.Gap?.Nanoseconds;

    /// <summary>The gaps of a whole recording.</summary>
    public Gaps(Plan plan, ReadOnlySpan<long> times, Sampling? sampling) : this(plan)
    {
        _longest ??= sampling?.LongestWithoutGap;
        if (!(sampling?.Longest > _longest)) return;
        for (var k = 1; k < times.Length; k++) Note(k, times[k] - times[k - 1]);
    }

    /// <summary>The samples that are the first after a gap, rising.</summary>
    public IReadOnlyList<int> First => _first;

    public bool IsFirstAfter(int sample) => _first.Count > 0 && _first.BinarySearch(sample) >= 0;

    /// <summary>The next sample after one that is the first after a gap; null if there is none.</summary>
    public int? NextAfter(int sample)
    {
        var found = _first.BinarySearch(sample + 1);
        var next = found >= 0 ? found : ~found;
        return next < _first.Count ? _first[next] : null;
    }

    /// <summary>States the step before a sample, ns.</summary>
    public void Note(int sample, long step)
    {
        if (step > _longest) _first.Add(sample);
    }

    /// <summary>Forgets the gaps before a sample.</summary>
    public void LetGo(int before) => _first.RemoveAll(sample => sample < before);

    public void Carry(Checkpoint checkpoint) => checkpoint.List(_first, checkpoint.Of);

    /// <summary>Refuses gaps where the plan rejects them.</summary>
    public void Check(Plan plan, string trace)
    {
        if (plan.Missing != MissingPolicy.Reject || _first.Count == 0) return;
        throw new InputException([.. First.Take(10).Select((sample, index) => new Problem($"{trace}(sample {sample})",
            $"a gap in time of more than {Seconds.Text(_longest!.Value)} before it" + (index == 9 && _first.Count > 10 ? $" (and {_first.Count - 10} more gaps)" : ""),
            "set \"gap\" to allow it, or \"missing\" to \"hold\" or \"trip\""))]);
    }
}
