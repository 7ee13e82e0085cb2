using MathNet.Numerics.Distributions;

namespace MonitorSim.Tuning;

/// <summary>Whether what runs need rises or falls from one to the next. Bounds for the next run take runs that are alike; warming up, wear or a programme that changes make them unlike.</summary>
/// <remarks>Kendall's rank correlation with the order of the runs, ties allowed, and its normal approximation: M. G. Kendall, Biometrika 30 (1938) 81; H. B. Mann, Econometrica 13 (1945) 245.</remarks>
/// <param name="Tau">From -1 (each run needs less than all before it) to 1 (more).</param>
/// <param name="Chance">How often runs that are alike would show so much of a trend in either direction, 0 to 1.</param>
public sealed record RunTrend(double Tau, double Chance)
{
    private const int FewestRuns = 8;
    private const double Rarely = 0.001;

    /// <summary>Whether runs that are alike would show so much of a trend less than once in a thousand times.</summary>
    public bool IsClear => Chance < Rarely;

    /// <summary>The trend of some values; null for fewer than eight, of which nothing can be said, or where all are equal.</summary>
    /// <param name="values">One a run, in the order of the runs.</param>
    public static RunTrend? Of(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var n = values.Count;
        if (n < FewestRuns) return null;
        var score = Score(values);
        var ties = values.GroupBy(value => value).Select(group => (double)group.Count()).ToList();
        var pairs = n * (n - 1) / 2.0;
        var variance = (Weight(n) - ties.Sum(Weight)) / 18;
        var comparable = pairs - ties.Sum(t => t * (t - 1) / 2);
        if (variance <= 0 || comparable <= 0) return null;

        // Tau-b; one step towards 0 because the score is a whole number.
        var z = Math.Max(0, Math.Abs(score) - 1) / Math.Sqrt(variance);
        return new(score / Math.Sqrt(pairs * comparable), 2 * Normal.CDF(0, 1, -z));
    }

    private static double Weight(double n) => n * (n - 1) * (2 * n + 5);

    // Pairs that rise minus pairs that fall, by merging: a million runs are still quick.
    private static double Score(IReadOnlyList<double> values)
    {
        double[] sorted = [.. values];
        return Merge(sorted, new double[sorted.Length], 0, sorted.Length);
    }

    private static double Merge(double[] values, double[] spare, int from, int until)
    {
        if (until - from < 2) return 0;
        var middle = (from + until) / 2;
        var score = Merge(values, spare, from, middle) + Merge(values, spare, middle, until);
        var (below, upTo) = (from, from);
        for (var right = middle; right < until; right++)
        {
            while (below < middle && values[below] < values[right]) below++;
            while (upTo < middle && values[upTo] <= values[right]) upTo++;
            score += (below - from) - (middle - upTo);
        }

        Array.Copy(values, from, spare, from, until - from);
        Array.Sort(spare, from, until - from);
        Array.Copy(spare, from, values, from, until - from);
        return score;
    }
}
