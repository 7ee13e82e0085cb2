using MonitorSim.Channels;

namespace MonitorSim.Estimators;

/// <summary>Backward difference through a first-order low-pass.</summary>
/// <remarks>y_k = y_(k-1) + dt/(tau + dt) · (d_k - y_(k-1)), d_k the backward difference (backward Euler, so that no exponential has to be the
/// same on every machine). y starts at the first difference, and anew after a missing value. Delay about tau + T/2.</remarks>
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
