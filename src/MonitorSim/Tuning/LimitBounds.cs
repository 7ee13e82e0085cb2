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

        return new(coverage, confidence, n >= needed ? isLower ? criticals.Min() : criticals.Max() : null, normal, needed, 1 - Math.Pow(coverage, n));
    }

    /// <summary>The number of runs whose largest covers that share with that confidence: the least n with 1 - coverage^n >= confidence.</summary>
    /// <remarks>S. S. Wilks, Ann. Math. Stat. 12 (1941) 91.</remarks>
    public static int RunsFor(double coverage, double confidence)
    {
        var n = (int)Math.Ceiling(Math.Log(1 - confidence) / Math.Log(coverage) - 1e-9);
        while (1 - Math.Pow(coverage, n) < confidence) n++;
        return n;
    }

    /// <summary>k of the normal one-sided tolerance limit mean + k·s: the quantile of the noncentral t distribution over sqrt(n), exact.</summary>
    /// <remarks>NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3: k = t(confidence; n - 1, z(coverage)·sqrt(n)) / sqrt(n).</remarks>
    /// <param name="n">Number of runs, at least 2.</param>
    /// <param name="coverage">Share of future runs, in (0, 1).</param>
    /// <param name="confidence">Confidence, in (0, 1).</param>
    public static double NormalFactor(int n, double coverage, double confidence)
    {
        var (root, shift) = (Math.Sqrt(n), Normal01.InverseCumulativeDistribution(coverage) * Math.Sqrt(n));
        return Brent.FindRoot(k => NoncentralT(k * root, n - 1, shift) - confidence, -50, 200, 1e-10, 500);
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
            sum += GaussLegendreRule.Integrate(u => chi.Density(u * root) * root * Normal01.CumulativeDistribution(t * u - shift),
                low + (high - low) * piece / Pieces, low + (high - low) * (piece + 1) / Pieces, 32);
        }

        return sum;
    }
}
