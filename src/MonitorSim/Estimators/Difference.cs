using Fractions;
using MonitorSim.Channels;

namespace MonitorSim.Estimators;

/// <summary><see cref="Plans.EstimatorName.Difference"/>, compared exactly.</summary>
internal sealed class Difference(Channel source, SampleTimes times, int samples) : DerivedChannel(source, times)
{
    protected override int Reach => samples;

    public override double Value(int sample)
    {
        var oldest = Oldest(sample);
        return (Source.Value(sample) - Source.Value(oldest)) / Times.Seconds(oldest, sample);
    }

    public override double Error(int sample)
    {
        var oldest = Oldest(sample);
        var seconds = Times.Seconds(oldest, sample);
        return (Source.Error(sample) + Source.Error(oldest)) / seconds * (1 + 8 * Rounding.Unit)
            + 5 * Rounding.Unit * (Math.Abs(Source.Value(sample)) + Math.Abs(Source.Value(oldest))) / seconds + 4 * double.Epsilon;
    }

    public override Fraction Exact(int sample)
    {
        var oldest = Oldest(sample);
        return (Source.Exact(sample) - Source.Exact(oldest)) * 1_000_000_000 / (Times[sample] - Times[oldest]);
    }
}
