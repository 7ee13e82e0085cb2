using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Estimators;

/// <summary>What an estimator costs at a steady period: how late its rate is, and how much of white position noise comes through.</summary>
/// <remarks>Both are read off the estimator itself, which is linear: the delay from its answer to p = t²/2 once settled (an undelayed rate is t), the gain
/// as the root of the sum of squares of its answer to a single 1.</remarks>
/// <param name="Delay">s.</param>
/// <param name="NoiseGain">Standard deviation of the rate for a white noise of standard deviation 1, 1/s.</param>
internal sealed record EstimatorFigures(double Delay, double NoiseGain)
{
    /// <summary>The figures at a steady period.</summary>
    /// <param name="plan">The estimator.</param>
    /// <param name="period">ns.</param>
    public static EstimatorFigures Of(EstimatorPlan plan, long period)
    {
        // Long enough for recursive estimators to settle: forty time constants, or four hundred samples.
        var settle = 400 + (int)Math.Min(20_000, 40 * (plan.Time?.Nanoseconds ?? 0) / period) + 4 * (plan.Samples ?? 1);
        var count = 2 * settle;
        var times = new SampleTimes();
        for (var k = 0; k < count; k++) times.Append(k * period);
        var last = (count - 1) * period / 1e9;
        var rate = Run(plan, times, k => k * (period / 1e9) * (k * (period / 1e9)) / 2, count).Value(count - 1);
        var impulse = Run(plan, times, k => k == settle ? 1 : 0, count);
        double squares = 0;
        for (var k = settle; k < count; k++) squares += impulse.Value(k) * impulse.Value(k);
        return new(last - rate, Math.Sqrt(squares));
    }

    private static Channel Run(EstimatorPlan plan, SampleTimes times, Func<int, double> position, int count)
    {
        var values = new double[count];
        for (var k = 0; k < count; k++) values[k] = position(k);
        var source = new RecordedChannel(new Numbers(new NumberColumn("p", null, values), hold: false), Fraction.One, Fraction.Zero);
        return Estimator.Of(plan, source, times);
    }
}
