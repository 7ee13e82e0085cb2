using MonitorSim.Channels;

namespace MonitorSim.Estimators;

/// <summary>Mean of the last backward differences.</summary>
/// <remarks>v_k = mean over i = 0..m-1 of (p_(k-i) - p_(k-i-1)) / (t_(k-i) - t_(k-i-1)). At a steady period T it equals the difference over m
/// samples: delay m·T/2, white-noise gain sqrt(2)/(m·T).</remarks>
internal sealed class MovingAverage(Channel source, SampleTimes times, int samples) : SmoothedChannel(source, times)
{
    protected override int Reach => samples;

    protected override double Estimate(int sample)
    {
        double sum = 0;
        var oldest = Oldest(sample);
        for (var k = oldest + 1; k <= sample; k++)
        {
            if (!Source.IsPresent(k) || !Source.IsPresent(k - 1)) return double.NaN;
            sum += BackwardDifference(k);
        }

        return sum / (sample - oldest);
    }
}
