using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class LimitBoundsTests
{
    /// <summary>NIST/SEMATECH e-Handbook 7.2.6.3 (N = 43, coverage 0.90, confidence 0.99: 1.87395 exact); one-sided 95/95 factors of the published
    /// tables for n = 5, 10, 20, 50.</summary>
    [Theory]
    [InlineData(43, 0.90, 0.99, 1.87395, 5e-6)]
    [InlineData(5, 0.95, 0.95, 4.2027, 5e-5)]
    [InlineData(10, 0.95, 0.95, 2.9110, 5e-5)]
    [InlineData(20, 0.95, 0.95, 2.3960, 5e-5)]
    [InlineData(50, 0.95, 0.95, 2.0650, 5e-5)]
    public void NormalFactor(int n, double coverage, double confidence, double expected, double tolerance) =>
        Assert.InRange(LimitBounds.NormalFactor(n, coverage, confidence), expected - tolerance, expected + tolerance);

    /// <summary>Natrella's approximation as NIST/SEMATECH 7.2.6.3 gives it for the same N, coverage and confidence, 1.8752, lies close beside the exact factor.</summary>
    [Fact]
    public void NatrellasApproximationIsClose()
    {
        var (z, zc) = (1.2815515655446004, 2.3263478740408408); // normal quantiles of 0.90 and 0.99
        var (a, b) = (1 - zc * zc / (2 * 42), z * z - zc * zc / 43);
        var approximate = (z + Math.Sqrt(z * z - a * b)) / a;
        Assert.Equal(1.8752, approximate, 5e-5);
        Assert.InRange(LimitBounds.NormalFactor(43, 0.90, 0.99), approximate - 0.002, approximate);
    }

    /// <summary>With ever more runs the factor falls to the normal quantile, 1.644854 for 95 %; by z + O(1/sqrt(n)).</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(400)]
    [InlineData(20_000)]
    public void ManyRunsAndFew(int n)
    {
        var k = LimitBounds.NormalFactor(n, 0.95, 0.95);
        Assert.InRange(k, 1.644854, 1.644854 + 40 / Math.Sqrt(n));
        if (n == 2) Assert.Equal(26.2597, k, 5e-5); // the published table of one-sided factors, 95/95, n = 2
    }

    /// <summary>Wilks: 59 runs for 95/95 and 299 for 99/95 if the largest counts, 93 and 473 if the second largest does.</summary>
    [Theory]
    [InlineData(0.95, 1, 59)]
    [InlineData(0.99, 1, 299)]
    [InlineData(0.95, 2, 93)]
    [InlineData(0.99, 2, 473)]
    [InlineData(0.95, 3, 124)]
    public void RunsFor(double coverage, int rank, int expected)
    {
        Assert.Equal(expected, LimitBounds.RunsFor(coverage, 0.95, rank));
        Assert.True(LimitBounds.ConfidenceOf(expected, coverage, rank) >= 0.95);
        Assert.True(LimitBounds.ConfidenceOf(expected - 1, coverage, rank) < 0.95);
    }

    /// <summary>By hand: 10, 11, 12, 13, 14 have the mean 12 and the standard deviation sqrt(10/4); with the published factor of n = 5, 4.2027, 6.6451 beside the mean.</summary>
    [Theory]
    [InlineData(false, 18.6451)]
    [InlineData(true, 5.3549)]
    public void NormalBound(bool isLower, double expected) => Assert.Equal(expected, LimitBounds.Of([10, 12, 11, 14, 13], isLower).Normal!.Value, 1e-4);

    /// <summary>By hand: 10 and 12 have the mean 11 and the standard deviation sqrt(2); the published factor of n = 2 is 26.2597.</summary>
    [Fact]
    public void TwoRunsAreEnoughForTheNormalBound() => Assert.Equal(11 + 26.2597 * Math.Sqrt(2), LimitBounds.Of([10, 12]).Normal!.Value, 1e-4);

    /// <summary>By hand: that both of two lie beyond the 90 % quantile has the chance 0.1²; that one of two does, 1 - 0.9²; the third of two is none.</summary>
    [Theory]
    [InlineData(1, 0.19)]
    [InlineData(2, 0.01)]
    [InlineData(3, 0)]
    public void ConfidenceOfTwoRuns(int rank, double expected) => Assert.Equal(expected, LimitBounds.ConfidenceOf(2, 0.9, rank), 1e-12);

    [Fact]
    public void TooFewRunsGiveNoDistributionFreeBound()
    {
        var few = LimitBounds.Of([1, 2, 3]);
        Assert.Null(few.DistributionFree);
        Assert.Equal(59, LimitBounds.Of([.. Enumerable.Range(1, 59).Select(k => (double)k)]).DistributionFree);
        Assert.Equal(1, LimitBounds.Of([.. Enumerable.Range(1, 59).Select(k => (double)k)], isLower: true).DistributionFree);
        Assert.Null(LimitBounds.Of([1]).Normal);
        Assert.NotNull(few.Normal);
    }
}
