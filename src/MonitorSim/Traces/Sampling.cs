using Fractions;

namespace MonitorSim.Traces;

/// <summary>A stretch without samples.</summary>
/// <param name="Sample">The first sample after it.</param>
/// <param name="From">The time of the sample before it, ns.</param>
/// <param name="Until">The time of the sample after it, ns.</param>
public readonly record struct Gap(int Sample, long From, long Until)
{
    /// <summary>Its length, ns.</summary>
    public long Duration => Until - From;
}

/// <summary>How regularly a recording was sampled: the steps from sample to sample.</summary>
/// <param name="Shortest">The shortest step, ns.</param>
/// <param name="Median">The median step, ns; of an even number of steps the mean of the middle two, exact.</param>
/// <param name="Longest">The longest step, ns.</param>
public sealed record Sampling(long Shortest, Fraction Median, long Longest)
{
    /// <summary>A step longer than this many medians is a gap, unless a plan says otherwise.</summary>
    public const int GapInMedians = 5;
    private const int Buckets = 1 << 16;

    /// <summary>Samples a second, from the median step.</summary>
    public double Rate => 1e9 / Median.ToDouble();

    /// <summary>The longest step that is no gap, ns: <see cref="GapInMedians"/> medians, rounded down.</summary>
    public long LongestWithoutGap => (long)(GapInMedians * Median.Numerator / Median.Denominator);

    /// <summary>The steps of a recording; null where it has one sample only.</summary>
    public static Sampling? Of(ReadOnlySpan<long> times)
    {
        if (times.Length < 2) return null;
        long shortest = long.MaxValue, longest = 0;
        for (var k = 1; k < times.Length; k++)
        {
            var step = times[k] - times[k - 1];
            shortest = Math.Min(shortest, step);
            longest = Math.Max(longest, step);
        }

        var steps = times.Length - 1;
        var upper = Ranked(times, steps / 2, shortest, longest);
        var lower = steps % 2 == 1 ? upper : Ranked(times, steps / 2 - 1, shortest, longest);
        return new Sampling(shortest, (new Fraction(lower) + new Fraction(upper)) / 2, longest);
    }

    /// <summary>The steps that are longer than a duration in ns, in their order.</summary>
    public static IReadOnlyList<Gap> GapsLongerThan(long duration, ReadOnlySpan<long> times)
    {
        var gaps = new List<Gap>();
        for (var k = 1; k < times.Length; k++)
        {
            if (times[k] - times[k - 1] > duration) gaps.Add(new Gap(k, times[k - 1], times[k]));
        }

        return gaps;
    }

    // The step of that rank, by counting into ever finer buckets: no second array of a day's steps.
    private static long Ranked(ReadOnlySpan<long> times, long rank, long low, long high)
    {
        var counts = new long[Buckets];
        while (low < high)
        {
            var width = (high - low) / Buckets + 1;
            Array.Clear(counts);
            for (var k = 1; k < times.Length; k++)
            {
                var step = times[k] - times[k - 1];
                if (step >= low && step <= high) counts[(step - low) / width]++;
            }

            var bucket = 0;
            while (rank >= counts[bucket]) rank -= counts[bucket++];
            (low, high) = (low + bucket * width, Math.Min(high, low + bucket * width + width - 1));
        }

        return low;
    }
}
