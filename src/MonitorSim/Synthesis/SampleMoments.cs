using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Synthesis;

/// <summary>When samples are taken.</summary>
/// <param name="Nanoseconds">Rising from 0.</param>
/// <param name="Numbers">Which sample of an even and whole recording each one is: noise goes by that number, so that missing rows change no other.</param>
internal readonly record struct SampleMoments(long[] Nanoseconds, int[] Numbers)
{
    private const int MostSamples = 100_000_000;

    /// <summary>Even times from 0 to an end (included).</summary>
    /// <param name="rate">Samples a second.</param>
    /// <param name="seconds">The end.</param>
    /// <param name="name">What the recording is called.</param>
    /// <exception cref="InputException">More samples than a recording can hold.</exception>
    public static SampleMoments Even(Quantity rate, decimal seconds, string name)
    {
        if (seconds * rate.Exact.ToDecimal() >= MostSamples)
            throw new InputException(new Problem(name, FormattableString.Invariant($"{seconds:0.###} s at {rate} are more than {MostSamples} samples"), "sample a shorter profile, or less often"));
        var end = Round(seconds);
        var clock = new RateClock(rate.Exact, name);
        var times = new List<long>();
        for (var time = clock.Next(); time <= end; time = clock.Next()) times.Add(time);
        return new([.. times], [.. Enumerable.Range(0, times.Count)]);
    }

    /// <summary>The same times, each up to <paramref name="most"/> earlier or later, evenly spread; the first stays at 0.</summary>
    public SampleMoments Jittered(long most, ulong seed)
    {
        if (most == 0) return this;
        var jittered = (long[])Nanoseconds.Clone();
        for (var k = 1; k < jittered.Length; k++) jittered[k] += (long)(Noise.Even(seed, k) % (2 * (ulong)most + 1)) - most;
        return this with { Nanoseconds = jittered };
    }

    /// <summary>Without the samples that lie in a window.</summary>
    public SampleMoments Without(IReadOnlyList<(long From, long Until)> windows)
    {
        if (windows.Count == 0) return this;
        var times = Nanoseconds;
        int[] kept = [.. Enumerable.Range(0, times.Length).Where(k => !windows.Any(window => window.From <= times[k] && times[k] < window.Until))];
        var numbers = Numbers;
        return new([.. kept.Select(k => times[k])], [.. kept.Select(k => numbers[k])]);
    }

    /// <summary>Seconds in integer nanoseconds, halves up.</summary>
    public static long Round(decimal seconds) => (long)Math.Floor(seconds * 1_000_000_000 + 0.5m);
}
