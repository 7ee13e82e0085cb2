namespace MonitorSim.Channels;

/// <summary>The times of the samples in integer nanoseconds.</summary>
internal sealed class SampleTimes : Samples<long>
{
    /// <summary>None yet.</summary>
    public SampleTimes() { }

    /// <param name="times">Of a whole recording.</param>
    public SampleTimes(long[] times) : base(times) { }

    /// <summary>Seconds between two samples: the exact nanoseconds, divided once.</summary>
    public double Seconds(int from, int to) => (this[to] - this[from]) / 1e9;

    /// <summary>The newest sample at or before that time, -1 if there is none; <paramref name="hint"/> is one known to be early enough.</summary>
    public int NewestAt(long time, int hint)
    {
        var k = Math.Max(hint, -1);
        while (k + 1 < Count && this[k + 1] <= time) k++;
        return k;
    }
}
