using Fractions;
using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Estimators;

/// <summary>The weights of smoothing slopes, read off by feeding one impulse a sample, against published tables.</summary>
public class PublishedWeightsTests
{
    /// <summary>The slope in units a sample at the newest of the positions, which are one second apart.</summary>
    private static double Slope(double[] positions, int degree, long[]? times = null)
    {
        times ??= [.. Enumerable.Range(0, positions.Length).Select(k => k * 1_000_000_000L)];
        var source = new RecordedChannel(new(new NumberColumn("p", null, positions), hold: false), Fraction.One, Fraction.Zero);
        return new SavitzkyGolay(source, new(times), positions.Length, degree).Value(positions.Length - 1);
    }

    private static double[] Weights(int samples, int degree) =>
        [.. Enumerable.Range(0, samples).Select(k => Slope([.. Enumerable.Range(0, samples).Select(j => j == k ? 1.0 : 0.0)], degree))];

    // First derivative at the last point of the fit: P. A. Gorry, Anal. Chem. 62 (1990) 570, tables of general least-squares smoothing and
    // differentiation by the convolution method (quoted from memory); oldest sample first. A straight line's slope is that of its middle.
    [Theory]
    [InlineData(5, 2, 70, new[] { 26, -27, -40, -13, 54 })]
    [InlineData(5, 1, 10, new[] { -2, -1, 0, 1, 2 })]
    [InlineData(3, 1, 2, new[] { -1, 0, 1 })]
    [InlineData(3, 2, 2, new[] { 1, -4, 3 })]
    [InlineData(7, 1, 28, new[] { -3, -2, -1, 0, 1, 2, 3 })]
    public void End_point_slopes(int samples, int degree, int divisor, int[] weights)
    {
        var found = Weights(samples, degree);
        for (var k = 0; k < samples; k++) Assert.Equal(weights[k] / (double)divisor, found[k], 1e-14);
    }

    [Theory]
    [InlineData(5, 2)]
    [InlineData(9, 2)]
    [InlineData(9, 3)]
    [InlineData(21, 4)]
    public void A_polynomial_of_the_degree_keeps_its_own_slope_at_uneven_times(int samples, int degree)
    {
        var random = new Random(samples * 10 + degree);
        var times = new long[samples];
        for (var k = 1; k < samples; k++) times[k] = times[k - 1] + random.Next(500_000, 9_000_000);
        var coefficients = Enumerable.Range(0, degree + 1).Select(_ => random.NextDouble() - 0.5).ToArray();
        double At(double t) => coefficients.Select((c, power) => c * Math.Pow(t * 100, power)).Sum();
        double RateAt(double t) => 100 * coefficients.Select((c, power) => power == 0 ? 0 : c * power * Math.Pow(t * 100, power - 1)).Sum();
        var slope = Slope([.. times.Select(t => At(t / 1e9))], degree, times);
        Assert.Equal(1, slope / RateAt(times[^1] / 1e9), 1e-8);
    }

    [Fact]
    public void With_fewer_samples_than_it_needs_it_uses_those_there_are()
    {
        var column = new NumberColumn("p", null, [0, 1, 4, 9, 16, 25]);
        var times = Enumerable.Range(0, 6).Select(k => k * 1_000_000_000L).ToArray();
        var slope = new SavitzkyGolay(new RecordedChannel(new(column, hold: false), Fraction.One, Fraction.Zero), new(times), 5, 2);
        Assert.Equal(Presence.NotYet, slope.At(0));
        Assert.Equal([1.0, 4.0, 6.0, 8.0, 10.0], Enumerable.Range(1, 5).Select(k => Math.Round(slope.Value(k), 12)));
    }
}
