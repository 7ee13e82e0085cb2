using Fractions;
using MathNet.Numerics;
using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Standards;

/// <summary>Savitzky-Golay at the newest point, against published weights, exact fractions and a reference library.</summary>
/// <remarks>A. Savitzky, M. J. E. Golay, Anal. Chem. 36 (1964) 1627, corrected by J. Steinier, Y. Termonia, J. Deltour, Anal. Chem. 44 (1972) 1906; end points:
/// P. A. Gorry, Anal. Chem. 62 (1990) 570 (quoted from memory). Reference library: MathNet.Numerics, <c>Fit.Polynomial</c>.</remarks>
public class EndPointWeightsTests
{
    // Published: 5 points, quadratic, newest point last.
    [Theory]
    [InlineData(0, 35, new[] { 3, -5, -3, 9, 31 })]
    [InlineData(1, 70, new[] { 26, -27, -40, -13, 54 })]
    public void Fractions_give_the_published_weights(int power, int divisor, int[] weights) =>
        Assert.Equal(weights.Select(weight => new Fraction(weight, divisor)), RationalLeastSquares.Weights(Steady(5), 2, power));

    public static TheoryData<int, int> Sizes()
    {
        var sizes = new TheoryData<int, int>();
        foreach (var samples in new[] { 2, 3, 4, 5, 6, 7, 9, 11, 15, 21, 25, 33 })
            for (var degree = 1; degree <= Math.Min(5, samples - 1); degree++) sizes.Add(samples, degree);
        return sizes;
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_size_and_degree_has_the_weights_of_exact_fractions(int samples, int degree)
    {
        var exact = RationalLeastSquares.Weights(Steady(samples), degree, 1);
        var found = Found(degree, [.. Enumerable.Range(0, samples).Select(k => k * 1_000_000_000L)]);
        for (var k = 0; k < samples; k++) Assert.Equal(exact[k].ToDouble(), found[k], 1e-12 * exact.Max(weight => Math.Abs(weight.ToDouble())));
    }

    // Real recordings jitter, and the fit goes by the actual times.
    [Theory]
    [InlineData(5, 2)]
    [InlineData(9, 3)]
    [InlineData(21, 4)]
    public void At_uneven_times_too(int samples, int degree)
    {
        var random = new Random(samples);
        var times = new long[samples];
        for (var k = 1; k < samples; k++) times[k] = times[k - 1] + random.Next(700_000, 8_810_000);
        var exact = RationalLeastSquares.Weights([.. times.Select(t => new Fraction(t - times[^1], 1_000_000_000))], degree, 1);
        var found = Found(degree, times);
        for (var k = 0; k < samples; k++) Assert.Equal(exact[k].ToDouble(), found[k], 1e-11 * exact.Max(weight => Math.Abs(weight.ToDouble())));
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_reference_library_finds_the_same_slopes(int samples, int degree)
    {
        var random = new Random(100 * samples + degree);
        double[] positions = [.. Enumerable.Range(0, samples).Select(_ => random.NextDouble() - 0.5)];
        double[] times = [.. Enumerable.Range(0, samples).Select(k => (double)(k - samples + 1))];

        // MathNet fits more points than coefficients; where both are as many, the polynomial passes through all of them.
        var reference = Fit.Polynomial(times, positions, degree)[1];
        Assert.Equal(reference, Slope(degree, positions, [.. Enumerable.Range(0, samples).Select(k => k * 1_000_000_000L)]), 1e-8);
    }

    private static Fraction[] Steady(int samples) => [.. Enumerable.Range(0, samples).Select(k => new Fraction(k - samples + 1))];

    /// <summary>The weights of the estimator, read off by one impulse a sample.</summary>
    private static double[] Found(int degree, long[] times) =>
        [.. times.Select((_, k) => Slope(degree, [.. times.Select((_, j) => j == k ? 1.0 : 0.0)], times))];

    private static double Slope(int degree, double[] positions, long[] times)
    {
        var source = new RecordedChannel(new(new NumberColumn("p", null, positions), hold: false), Fraction.One, Fraction.Zero);
        return new SavitzkyGolay(source, new(times), positions.Length, degree).Value(positions.Length - 1);
    }
}
