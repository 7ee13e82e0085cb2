namespace MonitorSim.Channels;

/// <summary>The times of the samples in integer nanoseconds, whole or growing sample by sample.</summary>
internal sealed class SampleTimes
{
    private long[] _times;

    public SampleTimes() => _times = new long[64];

    public SampleTimes(long[] times) => (_times, Count) = (times, times.Length);

    public int Count { get; private set; }

    public long this[int sample] => _times[sample];

    public ReadOnlySpan<long> Span => _times.AsSpan(0, Count);

    /// <summary>Seconds between two samples: the exact nanoseconds, divided once.</summary>
    public double Seconds(int from, int to) => (_times[to] - _times[from]) / 1e9;

    public void Append(long time)
    {
        if (Count == _times.Length) Array.Resize(ref _times, 2 * Count);
        _times[Count++] = time;
    }

    /// <summary>The newest sample at or before that time, -1 if there is none; <paramref name="hint"/> is one known to be early enough.</summary>
    public int NewestAt(long time, int hint)
    {
        var k = Math.Max(hint, -1);
        while (k + 1 < Count && _times[k + 1] <= time) k++;
        return k;
    }
}
