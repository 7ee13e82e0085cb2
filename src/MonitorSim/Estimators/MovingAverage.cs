using MonitorSim.Channels;

namespace MonitorSim.Estimators;

/// <summary><see cref="Plans.EstimatorName.MovingAverage"/>.</summary>
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
