using MonitorSim.Channels;

namespace MonitorSim.Estimators;

/// <summary><see cref="Plans.EstimatorName.LowPass"/>, by backward Euler, so that no exponential has to be the same on every machine.</summary>
internal sealed class LowPass(Channel source, SampleTimes times, double timeConstant) : SmoothedChannel(source, times)
{
    protected override int Reach => 1;

    protected override double Estimate(int sample)
    {
        var difference = BackwardDifference(sample);
        var previous = Previous(sample);
        if (double.IsNaN(previous)) return difference;
        var step = Times.Seconds(sample - 1, sample);
        return previous + step / (timeConstant + step) * (difference - previous);
    }
}
