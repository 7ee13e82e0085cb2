using Fractions;
using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Estimators;

/// <summary>Every estimator on motions whose rate is known: steady, and a step of the position.</summary>
public class SteadyMotionTests
{
    public static TheoryData<string> Estimators() =>
    [
        """ "name": "difference" """,
        """ "name": "difference", "samples": 4 """,
        """ "name": "movingAverage", "samples": 5 """,
        """ "name": "savitzkyGolay", "samples": 7, "degree": 2 """,
        """ "name": "lowPass", "time": "8 ms" """,
        """ "name": "alphaBeta", "alpha": 0.5, "beta": 0.1 """,
    ];

    private static Channel Rate(string estimator, double[] positions, long[] times)
    {
        var plan = PlanReader.Parse($$"""
            { "plan": 1, "axes": { "x": { "motion": "linear", "stops": { "STO": {} }, "channels": {
              "position": { "column": "p", "unit": "m" }, "velocity": { "from": "position", "estimator": { {{estimator}} } } } } } }
            """);
        var source = new RecordedChannel(new Numbers(new NumberColumn("p", null, positions), hold: false), Fraction.One, Fraction.Zero);
        return Estimator.Of(plan.Axes["x"].Channels.Velocity!.Estimator!, source, new SampleTimes(times));
    }

    [Theory]
    [MemberData(nameof(Estimators))]
    public void A_steady_speed_is_found_from_the_second_sample_on_at_uneven_times(string estimator)
    {
        long[] times = [.. Enumerable.Range(0, 40).Select(k => k * 4_000_000L + k * 7919 % 1_000_000)];
        var rate = Rate(estimator, [.. times.Select(t => 0.25 * t / 1e9 - 3)], times);
        Assert.Equal(Presence.NotYet, rate.At(0));
        for (var k = 1; k < times.Length; k++)
        {
            Assert.True(rate.IsPresent(k));
            Assert.Equal(0.25, rate.Value(k), 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Estimators))]
    public void It_is_causal_and_a_missing_value_is_missing_until_it_is_out_of_reach(string estimator)
    {
        long[] times = [.. Enumerable.Range(0, 60).Select(k => k * 4_000_000L)];
        double[] positions = [.. Enumerable.Range(0, 60).Select(k => Math.Round(Math.Sin(k / 5.0), 6))], later = [.. positions];
        for (var k = 30; k < 60; k++) later[k] += k;
        var (rate, other) = (Rate(estimator, positions, times), Rate(estimator, later, times));
        for (var k = 1; k < 30; k++) Assert.Equal(rate.Value(k), other.Value(k));
        Assert.NotEqual(rate.Value(30), other.Value(30));

        positions[30] = double.NaN;
        rate = Rate(estimator, positions, times);
        Assert.Equal((Presence.Present, Presence.Missing), (rate.At(29), rate.At(30)));
        Assert.Equal(Presence.Present, rate.At(40));
    }

    [Fact]
    public void A_low_pass_rises_by_its_share_of_the_step_at_every_sample()
    {
        // dt = 4 ms, tau = 12 ms: a quarter of what is left at every sample; the first difference starts it.
        long[] times = [.. Enumerable.Range(0, 5).Select(k => k * 4_000_000L)];
        var rate = Rate(""" "name": "lowPass", "time": "12 ms" """, [0, 0, 0.004, 0.008, 0.012], times);
        Assert.Equal([0.0, 0.25, 0.4375, 0.578125], Enumerable.Range(1, 4).Select(k => Math.Round(rate.Value(k), 12)));
    }

    [Fact]
    public void A_tracking_filter_follows_its_equations()
    {
        long[] times = [0, 1_000_000_000, 2_000_000_000, 3_000_000_000];
        var rate = Rate(""" "name": "alphaBeta", "alpha": 0.5, "beta": 0.25 """, [0, 1, 3, 3], times);

        // x=1, v=1; predicted 2, residual 1: x=2.5, v=1.25; predicted 3.75, residual -0.75: v=1.0625.
        Assert.Equal([1, 1.25, 1.0625], Enumerable.Range(1, 3).Select(k => rate.Value(k)));
    }
}
