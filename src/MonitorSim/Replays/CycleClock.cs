using MonitorSim.Channels;
using MonitorSim.Monitors;

namespace MonitorSim.Replays;

/// <summary>Which cycles there are, and which sample each one sees.</summary>
/// <param name="times">The times of the samples.</param>
/// <param name="cycle">The own cycle T, ns; null: one cycle a sample.</param>
/// <param name="phase">The own cycle's phase, ns.</param>
/// <param name="inputDelay">The age of the newest sample that a cycle can see, ns.</param>
internal sealed class CycleClock(SampleTimes times, long? cycle, long phase, long inputDelay)
{
    // The first own cycle n with phase + n·T - inputDelay >= 0.
    private readonly long _first = cycle is { } t && inputDelay > phase ? (inputDelay - phase + t - 1) / t : 0;

    /// <summary>How many cycles the samples so far allow for.</summary>
    public int Count => cycle is null ? times.Count : times.Count == 0 ? 0 : CountUntil(times[times.Count - 1]);

    /// <summary>How many cycles can be run before the next sample is known: none of them could see it.</summary>
    /// <param name="until">The next sample's time, ns.</param>
    public int CountBefore(long until) => cycle is null ? times.Count : CountUntil(until - 1);

    /// <summary>The time of the cycle of that index, ns.</summary>
    public long TimeOf(int index) => cycle is { } t ? phase + (_first + index) * t : times[index] + inputDelay;

    /// <summary>How long it takes from one cycle to another, ns.</summary>
    public long Lasting(int from, int until) => cycle is { } t ? (until - from) * t : times[until] - times[from];

    /// <summary>The cycle of that index; <paramref name="hint"/> is a sample known to be early enough.</summary>
    public Cycle At(int index, int hint = 0)
    {
        var time = TimeOf(index);
        if (cycle is null) return new(index, time, index);
        return new(index, time, times.NewestAt(time - inputDelay, hint));
    }

    /// <summary>The sample that a cycle sees; <paramref name="hint"/> is one known to be early enough.</summary>
    public int SampleAt(int index, int hint) => cycle is null ? index : times.NewestAt(TimeOf(index) - inputDelay, hint);

    /// <summary>The cycle of that index, whatever was asked for before.</summary>
    public Cycle Seeing(int index) => At(index, cycle is null ? 0 : FirstHint(index));

    /// <summary>The cycles from one index up to, not including, another.</summary>
    public IEnumerable<Cycle> Between(int from, int until)
    {
        if (from >= until) yield break;
        var hint = cycle is null ? 0 : FirstHint(from);
        for (var n = from; n < until; n++)
        {
            var next = At(n, hint);
            hint = next.Sample;
            yield return next;
        }
    }

    /// <summary>The first cycle at or after that time, ns, not before <paramref name="hint"/>; <see cref="Count"/> if there is none.</summary>
    public int FirstAt(long time, int hint)
    {
        var count = Count;
        if (cycle is { } t)
        {
            var number = Math.Max(0, (time - phase + t - 1) / t - _first);
            return (int)Math.Clamp(number, Math.Min(hint, count), count);
        }

        return hint >= count ? count : FirstSample(time - inputDelay, hint, count);
    }

    /// <summary>The last cycle at or before that time, ns; <paramref name="known"/> is one that is.</summary>
    public int LastAt(long time, int known)
    {
        var next = FirstAt(time + 1, known + 1);
        return next - 1;
    }

    /// <summary>The first cycle that sees a sample or a newer one, not before <paramref name="hint"/>; <see cref="Count"/> if there is none.</summary>
    public int FirstSeeing(int sample, int hint) =>
        cycle is null ? Math.Max(sample, hint) : sample >= times.Count ? Count : FirstAt(times[sample] + inputDelay, hint);

    // Most recordings are even: look first where the sample would be then, and leap from there in growing steps, then halve.
    private int FirstSample(long time, int hint, int count)
    {
        var (below, above) = (hint - 1, count);
        var even = (time - times[hint]) * ((double)(count - 1 - hint) / Math.Max(1, times[count - 1] - times[hint]));
        var middle = hint + (int)Math.Clamp(Math.Round(even), 0, count - 1 - hint);
        for (var step = 1; above - below > 1; step *= 2)
        {
            if (times[middle] < time) (below, middle) = (middle, middle + step);
            else (above, middle) = (middle, middle - step);
            if (middle <= below || middle >= above) break;
        }

        while (above - below > 1)
        {
            middle = below + (above - below) / 2;
            if (times[middle] < time) below = middle;
            else above = middle;
        }

        return above;
    }

    // How many own cycles have c_n - inputDelay <= time. A negative quotient would round up to cycle 0, which is not there yet.
    private int CountUntil(long time)
    {
        var reach = time + inputDelay - phase;
        return reach < 0 ? 0 : (int)Math.Max(0, reach / cycle!.Value - _first + 1);
    }

    private int FirstHint(int index)
    {
        var seen = TimeOf(index) - inputDelay;
        int low = 0, high = times.Count - 1;
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (times[middle] <= seen) low = middle;
            else high = middle - 1;
        }

        return low;
    }
}
