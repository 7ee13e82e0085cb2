using MonitorSim.Channels;

namespace MonitorSim.Estimators;

/// <summary><see cref="Plans.EstimatorName.SavitzkyGolay"/>.</summary>
/// <remarks>The fit runs on polynomials that are orthogonal over the samples' own times (G. E. Forsythe, J. SIAM 5 (1957) 74), so no matrix has to be solved.</remarks>
internal sealed class SavitzkyGolay(Channel source, SampleTimes times, int samples, int degree) : SmoothedChannel(source, times)
{
    // Of the orthogonal polynomials of the present degree and the one before: their values at the samples.
    private readonly double[] _now = new double[samples], _before = new double[samples], _times = new double[samples], _rest = new double[samples];

    protected override int Reach => samples - 1;

    protected override double Estimate(int sample)
    {
        var oldest = Oldest(sample);
        var count = sample - oldest + 1;
        for (var k = 0; k < count; k++)
        {
            if (!Source.IsPresent(oldest + k)) return double.NaN;
            _times[k] = Times.Seconds(sample, oldest + k);
            _rest[k] = Source.Value(oldest + k) - Source.Value(sample);
            (_now[k], _before[k]) = (1, 0);
        }

        double slope = 0, value = 1, valueBefore = 0, rate = 0, rateBefore = 0, normBefore = 1;
        for (var d = 0; ; d++)
        {
            double norm = 0, projection = 0, centre = 0;
            for (var k = 0; k < count; k++)
            {
                norm += _now[k] * _now[k];
                projection += _now[k] * _rest[k];
                centre += _now[k] * _now[k] * _times[k];
            }

            var weight = projection / norm;
            slope += weight * rate;
            if (d == Math.Min(degree, count - 1)) return slope;

            // Taking out each part as it is found keeps later ones accurate.
            for (var k = 0; k < count; k++) _rest[k] -= weight * _now[k];
            centre /= norm;
            var carry = d == 0 ? 0 : norm / normBefore;
            for (var k = 0; k < count; k++)
                (_now[k], _before[k]) = ((_times[k] - centre) * _now[k] - carry * _before[k], _now[k]);
            (value, valueBefore, rate, rateBefore) =
                (-centre * value - carry * valueBefore, value, value - centre * rate - carry * rateBefore, rate);
            normBefore = norm;
        }
    }
}
