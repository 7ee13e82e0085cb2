using MonitorSim.Estimators;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Estimators;

public sealed class EstimatorFiguresTests
{
    private const long Period = 1_000_000;

    /// <summary>Difference over m samples: delay m·T/2, white-noise gain sqrt(2)/(m·T); the moving average of m differences is the same (it telescopes).</summary>
    [Theory]
    [InlineData(EstimatorName.Difference, 1)]
    [InlineData(EstimatorName.Difference, 4)]
    [InlineData(EstimatorName.MovingAverage, 8)]
    public void Differences(EstimatorName name, int samples)
    {
        var figures = EstimatorFigures.Of(new() { Name = name, Samples = samples }, Period);
        Assert.Equal(samples * 1e-3 / 2, figures.Delay, 1e-9);
        Assert.Equal(Math.Sqrt(2) / (samples * 1e-3), figures.NoiseGain, 1e-6);
    }

    /// <summary>Five points, quadratic, newest point: slope weights [26 -27 -40 -13 54]/70 of the published tables, so no delay on a parabola and a gain of
    /// sqrt(26² + 27² + 40² + 13² + 54²)/70 a period.</summary>
    [Fact]
    public void SavitzkyGolayAtItsEnd()
    {
        var figures = EstimatorFigures.Of(new() { Name = EstimatorName.SavitzkyGolay, Samples = 5, Degree = 2 }, Period);
        Assert.Equal(0, figures.Delay, 1e-9);
        Assert.Equal(Math.Sqrt((26 * 26) + (27 * 27) + (40 * 40) + (13 * 13) + (54 * 54)) / 70 / 1e-3, figures.NoiseGain, 1e-6);
    }

    /// <summary>The first-order low-pass of the differences is late by its time constant and half a period.</summary>
    [Fact]
    public void LowPass()
    {
        var figures = EstimatorFigures.Of(new() { Name = EstimatorName.LowPass, Time = "10 ms" }, Period);
        Assert.Equal(10.5e-3, figures.Delay, 1e-6);
        Assert.InRange(figures.NoiseGain, 1, Math.Sqrt(2) / 1e-3);
    }

    /// <summary>An alpha-beta filter follows a constant acceleration with a steady lag in rate: less late and more noisy with a higher beta.</summary>
    [Fact]
    public void AlphaBeta()
    {
        var slow = EstimatorFigures.Of(new() { Name = EstimatorName.AlphaBeta, Alpha = 0.3, Beta = 0.02 }, Period);
        var quick = EstimatorFigures.Of(new() { Name = EstimatorName.AlphaBeta, Alpha = 0.5, Beta = 0.2 }, Period);
        Assert.True(quick.Delay < slow.Delay, $"{quick.Delay} s against {slow.Delay} s");
        Assert.True(quick.NoiseGain > slow.NoiseGain, $"{quick.NoiseGain} 1/s against {slow.NoiseGain} 1/s");
    }
}
