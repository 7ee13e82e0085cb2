using FsCheck.Xunit;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class RunTrendTests
{
    /// <summary>By hand: 12 rising values have S = 66 and Var S = 12·11·29/18 = 212.667, z = 65/14.583 = 4.457.</summary>
    [Fact]
    public void RisingAndFalling()
    {
        double[] rising = [.. Enumerable.Range(0, 12).Select(k => (double)k * k)];
        var up = RunTrend.Of(rising)!;
        Assert.Equal(1, up.Tau);
        Assert.Equal(8.3e-6, up.Chance, 2e-7);
        Assert.True(up.IsClear);
        Assert.Equal(-1, RunTrend.Of([.. rising.Reverse()])!.Tau);
    }

    [Fact]
    public void NothingIsSaidOfFewOrEqualRuns()
    {
        Assert.Null(RunTrend.Of([1, 2, 3, 4, 5, 6, 7]));
        Assert.Null(RunTrend.Of([.. Enumerable.Repeat(2.0, 30)]));
        Assert.False(RunTrend.Of([3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8])!.IsClear);
    }

    /// <summary>Runs that are alike come in any order: the variance of rises minus falls over all 40,320 orders of eight runs, two and three of which are equal, one by one.</summary>
    [Fact]
    public void TheVarianceWithTiesIsThatOfAllOrders()
    {
        double[] rising = [1, 1, 2, 3, 3, 3, 4, 5];
        var (orders, squares) = (0, 0.0);
        Permute([.. rising], 0);
        Assert.Equal(40_320, orders);
        var z = (Score(rising) - 1) / Math.Sqrt(squares / orders);
        Assert.Equal(2 * MathNet.Numerics.Distributions.Normal.CDF(0, 1, -z), RunTrend.Of(rising)!.Chance, 1e-12);

        void Permute(double[] values, int from)
        {
            if (from == values.Length) (orders, squares) = (orders + 1, squares + Math.Pow(Score(values), 2));
            for (var k = from; k < values.Length; k++)
            {
                (values[from], values[k]) = (values[k], values[from]);
                Permute(values, from + 1);
                (values[from], values[k]) = (values[k], values[from]);
            }
        }

        static double Score(double[] values)
        {
            var score = 0;
            for (var k = 0; k < values.Length; k++)
                for (var later = k + 1; later < values.Length; later++) score += Math.Sign(values[later] - values[k]);
            return score;
        }
    }

    /// <summary>The quick count of pairs against all pairs, with ties.</summary>
    [Property(MaxTest = 200)]
    public void AgreesWithAllPairs(byte[] bytes)
    {
        double[] values = [.. bytes.Concat(new byte[] { 1, 2, 3, 4, 5, 6, 7, 8 }).Take(60).Select(b => (double)(b / 16))];
        int score = 0, comparable = 0;
        for (var k = 0; k < values.Length; k++)
        {
            for (var later = k + 1; later < values.Length; later++)
            {
                score += Math.Sign(values[later] - values[k]);
                comparable += values[later] == values[k] ? 0 : 1;
            }
        }

        var pairs = values.Length * (values.Length - 1) / 2.0;
        if (comparable == 0) Assert.Null(RunTrend.Of(values));
        else Assert.Equal(score / Math.Sqrt(pairs * comparable), RunTrend.Of(values)!.Tau, 1e-12);
    }
}
