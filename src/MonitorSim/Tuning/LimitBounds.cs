using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace MonitorSim.Tuning;

/// <summary>One-sided bounds on the critical limit of the next run. They hold for independent runs of the same programme: pieces of one recording are
/// not independent runs.</summary>
/// <param name="Coverage">The share of future runs that shall stay below.</param>
/// <param name="Confidence">How sure that is.</param>
/// <param name="DistributionFree">The largest of the runs (for lower sides the least), if there are enough of them; else null.</param>
/// <param name="Normal">Mean plus k standard deviations, if the runs are normally distributed; null with fewer than two.</param>
/// <param name="RunsNeeded">How many runs the distribution-free bound needs.</param>
/// <param name="Reached">The confidence that the present number of runs gives, 1 - coverage^n.</param>
public sealed record LimitBounds(double Coverage, double Confidence, double? DistributionFree, double? Normal, int RunsNeeded, double Reached)
{
    /// <summary>The bounds of the critical limits of several runs.</summary>
    /// <param name="criticals">One a run, SI.</param>
    /// <param name="isLower">Whether the limit is one from below.</param>
    /// <param name="coverage">Share of future runs, in (0, 1).</param>
    /// <param name="confidence">Confidence, in (0, 1).</param>
    public static LimitBounds Of(IReadOnlyList<double> criticals, bool isLower = false, double coverage = 0.95, double confidence = 0.95)
    {
        var (n, needed) = (criticals.Count, RunsFor(coverage, confidence));
        double? normal = null;
        if (n >= 2)
        {
            var mean = criticals.Average();
            var deviation = Math.Sqrt(criticals.Sum(value => (value - mean) * (value - mean)) / (n - 1));
            var reach = NormalFactor(n, coverage, confidence) * deviation;
            normal = isLower ? mean - reach : mean + reach;
        }

        return new(coverage, confidence, n >= needed ? isLower ? criticals.Min() : criticals.Max() : null, normal, needed, ConfidenceOf(n, coverage));
    }

    /// <summary>The number of runs of which the <paramref name="rank"/>-th largest covers that share with that confidence. For the largest it is the least n
    /// with 1 - coverage^n >= confidence.</summary>
    /// <remarks>S. S. Wilks, Ann. Math. Stat. 12 (1941) 91.</remarks>
    /// <param name="coverage">Share of future runs, in (0, 1).</param>
    /// <param name="confidence">Confidence, in (0, 1).</param>
    /// <param name="rank">1: the largest, 2: the second largest, …</param>
    public static int RunsFor(double coverage, double confidence, int rank = 1)
    {
        // Doubled until it is enough, then halved down to the least.
        var (few, enough) = (rank - 1, rank);
        while (ConfidenceOf(enough, coverage, rank) < confidence) (few, enough) = (enough, checked(2 * enough));
        while (enough - few > 1)
        {
            var middle = few + (enough - few) / 2;
            if (ConfidenceOf(middle, coverage, rank) < confidence) few = middle;
            else enough = middle;
        }

        return enough;
    }

    /// <summary>The confidence with which the <paramref name="rank"/>-th largest of n runs covers that share of future ones, whatever their distribution: at least
    /// so many of the n lie beyond the quantile, 1 - P(Binomial(n, 1 - coverage) &lt; rank). For the largest it is 1 - coverage^n.</summary>
    /// <remarks>H. A. David, H. N. Nagaraja, Order Statistics, 3rd ed. (2003), 7.2.</remarks>
    /// <param name="n">Number of runs.</param>
    /// <param name="coverage">Share of future runs, in (0, 1).</param>
    /// <param name="rank">1: the largest, 2: the second largest, …</param>
    public static double ConfidenceOf(int n, double coverage, int rank = 1)
    {
        if (rank > n) return 0;
        return rank == 1 ? 1 - Math.Pow(coverage, n) : 1 - Binomial.CDF(1 - coverage, n, rank - 1);
    }

    /// <summary>k of the normal one-sided tolerance limit mean + k·s: the quantile of the noncentral t distribution over sqrt(n), exact.</summary>
    /// <remarks>NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3: k = t(confidence; n - 1, z(coverage)·sqrt(n)) / sqrt(n).</remarks>
    /// <param name="n">Number of runs, at least 2.</param>
    /// <param name="coverage">Share of future runs, in (0, 1).</param>
    /// <param name="confidence">Confidence, in (0, 1).</param>
    public static double NormalFactor(int n, double coverage, double confidence)
    {
        var (root, shift) = (Math.Sqrt(n), Normal01.InverseCumulativeDistribution(coverage) * Math.Sqrt(n));
        return Brent.FindRootExpand(k => NoncentralT(k * root, n - 1, shift) - confidence, -1, 10, 1e-10, 1000, 1.6, 100);
    }

    private static readonly Normal Normal01 = new(0, 1);

    // P(T <= t) = mean of Phi(t·u - shift) over u = sqrt(V/nu), V chi-squared with nu degrees of freedom.
    private static double NoncentralT(double t, int degrees, double shift)
    {
        var chi = new Chi(degrees);
        var (root, spread) = (Math.Sqrt(degrees), 12 / Math.Sqrt(2.0 * degrees));
        var (low, high) = (Math.Max(0, 1 - spread), 1 + spread);
        const int Pieces = 16;
        double sum = 0;
        for (var piece = 0; piece < Pieces; piece++)
        {
            sum += GaussLegendreRule.Integrate(u => Math.Exp(chi.DensityLn(u * root)) * root * Normal01.CumulativeDistribution(t * u - shift),
                low + (high - low) * piece / Pieces, low + (high - low) * (piece + 1) / Pieces, 32);
        }

        return sum;
    }
}
