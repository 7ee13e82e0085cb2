using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class LimitBoundsTests
{
    /// <summary>NIST/SEMATECH e-Handbook 7.2.6.3 (N = 43, coverage 0.90, confidence 0.99: 1.8740 exact); one-sided 95/95 factors of the published
    /// tables for n = 5, 10, 20, 50.</summary>
    [Theory]
    [InlineData(43, 0.90, 0.99, 1.87395, 5e-6)]
    [InlineData(5, 0.95, 0.95, 4.2027, 5e-5)]
    [InlineData(10, 0.95, 0.95, 2.9110, 5e-5)]
    [InlineData(20, 0.95, 0.95, 2.3960, 5e-5)]
    [InlineData(50, 0.95, 0.95, 2.0650, 5e-5)]
    public void NormalFactor(int n, double coverage, double confidence, double expected, double tolerance) =>
        Assert.InRange(LimitBounds.NormalFactor(n, coverage, confidence), expected - tolerance, expected + tolerance);

    /// <summary>1 - p^n >= confidence (Wilks): 59 runs for 95/95, 299 for 99/95.</summary>
    [Theory]
    [InlineData(0.95, 59)]
    [InlineData(0.99, 299)]
    public void RunsFor(double coverage, int expected) => Assert.Equal(expected, LimitBounds.RunsFor(coverage, 0.95));

    [Fact]
    public void TooFewRunsGiveNoDistributionFreeBound()
    {
        var few = LimitBounds.Of([1, 2, 3]);
        Assert.Null(few.DistributionFree);
        Assert.Equal(59, LimitBounds.Of([.. Enumerable.Range(1, 59).Select(k => (double)k)]).DistributionFree);
        Assert.Null(LimitBounds.Of([1]).Normal);
        Assert.NotNull(few.Normal);
    }
}
