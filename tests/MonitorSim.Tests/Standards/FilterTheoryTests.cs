using Fractions;
using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Standards;

/// <summary>Estimators against the theory of their filters. T is the period, 1 ms.</summary>
public class FilterTheoryTests
{
    private const double T = 1e-3;

    /// <summary>The rate of positions that are one period apart.</summary>
    private static Channel Rate(EstimatorPlan plan, int count, Func<int, double> position)
    {
        var source = new RecordedChannel(new(new NumberColumn("p", null, [.. Enumerable.Range(0, count).Select(position)]), hold: false), Fraction.One, Fraction.Zero);
        return Estimator.Of(plan, source, new([.. Enumerable.Range(0, count).Select(k => k * 1_000_000L)]));
    }

    private static EstimatorFigures Figures(EstimatorPlan plan) => EstimatorFigures.Of(plan, 1_000_000);

    // First-order lag, any textbook of control: the answer to a step is 1 - exp(-t/tau); 63.2 % after tau, 95.0 % after 3 tau, 99.3 % after 5 tau. Backward Euler,
    // 1 - (tau/(tau + T))^k, lags behind that by at most T/(2·e·tau) for T << tau, its largest error, met at tau.
    [Theory]
    [InlineData(20)]
    [InlineData(100)]
    [InlineData(500)]
    public void A_low_pass_answers_a_step_of_speed_as_a_first_order_lag(int tau)
    {
        var rate = Rate(new() { Name = EstimatorName.LowPass, Time = $"{tau} ms" }, 5 * tau + 2, k => 0.25 * T * Math.Max(0, k - 1));
        var bound = 1.1 / (2 * Math.E * tau);
        for (var k = 1; k < 5 * tau; k++)
        {
            // The first difference, of samples 0 and 1, is 0; the step is seen from sample 2 on.
            var answer = rate.Value(k + 1) / 0.25;
            Assert.Equal(1 - Math.Pow(tau / (tau + 1.0), k), answer, 1e-9);
            Assert.InRange(1 - Math.Exp(-(double)k / tau) - answer, -1e-12, bound);
        }
    }

    // The same through a whole replay: SLS sees the speed where the lag has risen above the limit.
    [Theory]
    [InlineData("63 mm/s")]
    [InlineData("90 mm/s")]
    [InlineData("99 mm/s")]
    public void Limited_speed_trips_later_by_the_lag(string limit)
    {
        var plan = Bench.Plan($$"""
            "motion": "linear", "stops": { "STO": {} }, "channels": { "position": { "column": "p", "unit": "mm" },
              "velocity": { "from": "position", "estimator": { "name": "lowPass", "time": "50 ms" } } },
            "monitors": [ { "name": "m", "function": "SLS", "limit": "{{limit}}", "reaction": "none" } ]
            """);
        var result = Replay.Run(plan, Bench.Milliseconds(("p", [.. Enumerable.Range(0, 600).Select(k => 0.1 * Math.Max(0, k - 1))])));

        // (tau/(tau + T))^k < 1 - limit, from sample 1 on.
        var share = 1 - double.Parse(limit[..2], System.Globalization.CultureInfo.InvariantCulture) / 100;
        Assert.Equal(1 + (int)Math.Floor(Math.Log(share) / Math.Log(50.0 / 51)) + 1, Assert.Single(result.Trips).Sample);
    }

    // H(z) = g(1 - 1/z) / (1 - (1 - g)/z) / T with g = T/(tau + T): by Parseval the sum of squares of its impulse answer is 2·g²/(2 - g)/T².
    [Theory]
    [InlineData(3)]
    [InlineData(10)]
    [InlineData(80)]
    public void A_low_pass_lets_noise_through_as_its_transfer_function_says(int tau)
    {
        var g = 1.0 / (tau + 1);
        Assert.Equal(g * Math.Sqrt(2 / (2 - g)) / T, Figures(new() { Name = EstimatorName.LowPass, Time = $"{tau} ms" }).NoiseGain, 1e-6);
    }

    // A steadily rising speed is seen late by half the length of the average; a symmetric window of N points by (N - 1)/2 periods.
    [Theory]
    [InlineData(EstimatorName.MovingAverage, 1, null, 0.5)]
    [InlineData(EstimatorName.MovingAverage, 7, null, 3.5)]
    [InlineData(EstimatorName.Difference, 7, null, 3.5)]
    [InlineData(EstimatorName.SavitzkyGolay, 7, 1, 3.0)]
    [InlineData(EstimatorName.SavitzkyGolay, 20, 1, 9.5)]
    [InlineData(EstimatorName.SavitzkyGolay, 7, 2, 0.0)]
    public void A_mean_is_late_by_half_its_length(EstimatorName name, int samples, int? degree, double periods)
    {
        var plan = new EstimatorPlan { Name = name, Samples = samples, Degree = degree };
        var rate = Rate(plan, 60, k => 1.5 * k * T * k * T / 2);
        for (var k = samples; k < 60; k++) Assert.Equal(1.5 * (k - periods) * T, rate.Value(k), 1e-10);
        Assert.Equal(periods * T, Figures(plan).Delay, 1e-9);
    }

    // Slope of a straight line through N points with white noise: variance 12/(N(N² - 1)T²), any textbook of regression.
    [Theory]
    [InlineData(3)]
    [InlineData(9)]
    [InlineData(25)]
    public void A_fitted_line_lets_noise_through_as_regression_says(int n) =>
        Assert.Equal(Math.Sqrt(12.0 / (n * ((double)n * n - 1))) / T, Figures(new() { Name = EstimatorName.SavitzkyGolay, Samples = n, Degree = 1 }).NoiseGain, 1e-6);

    // T. R. Benedict, G. W. Bordner, IRE Trans. AC-7 (1962) 27 (from memory): variance of the rate 2·beta²/(T²·alpha·(4 - 2·alpha - beta)); their best pair has
    // beta = alpha²/(2 - alpha). A steady acceleration a leaves the residual a·T²/beta, hence the rate late by T(alpha/beta - 1/2).
    [Theory]
    [InlineData(0.2, 0.02222222222222222)]
    [InlineData(0.5, 0.16666666666666666)]
    [InlineData(0.5, 0.4)]
    [InlineData(0.9, 0.7363636363636363)]
    public void A_tracking_filter_has_the_lag_and_the_noise_of_the_textbook(double alpha, double beta)
    {
        var figures = Figures(new() { Name = EstimatorName.AlphaBeta, Alpha = alpha, Beta = beta });
        Assert.Equal(T * (alpha / beta - 0.5), figures.Delay, 1e-8);
        Assert.Equal(Math.Sqrt(2 * beta * beta / (alpha * (4 - 2 * alpha - beta))) / T, figures.NoiseGain, 1e-5);
    }

    // P. R. Kalata, IEEE Trans. AES-20 (1984) 174 (from memory): for the tracking index lambda = sigma_a·T²/sigma_p the steady Kalman filter of a mass that is pushed
    // at random has alpha = -(lambda² + 8·lambda - (lambda + 4)·sqrt(lambda² + 8·lambda))/8 and beta = (lambda² + 4·lambda - lambda·sqrt(lambda² + 8·lambda))/4.
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.3)]
    [InlineData(1.0)]
    [InlineData(2.0)]
    public void With_gains_of_the_tracking_index_it_is_the_steady_kalman_filter(double lambda)
    {
        var root = Math.Sqrt(lambda * lambda + 8 * lambda);
        var (alpha, beta) = (-(lambda * lambda + 8 * lambda - (lambda + 4) * root) / 8, (lambda * lambda + 4 * lambda - lambda * root) / 4);
        const int count = 4000;
        var random = new Random(7);
        double[] positions = [.. Enumerable.Range(0, count).Select(k => 0.01 * Math.Sin(k / 50.0) + 1e-4 * random.NextDouble())];
        var rate = Rate(new() { Name = EstimatorName.AlphaBeta, Alpha = alpha, Beta = beta }, count, k => positions[k]);
        var kalman = KalmanRates(positions, lambda);
        for (var k = 3000; k < count; k++) Assert.Equal(kalman[k], rate.Value(k), 1e-9);
    }

    /// <summary>A Kalman filter with its own covariances: state (position, rate·T), noise of unit variance on positions, pushes of variance lambda².</summary>
    private static double[] KalmanRates(double[] positions, double lambda)
    {
        double x = positions[0], v = 0, pp = 1, pv = 0, vv = 1;
        var rates = new double[positions.Length];
        for (var k = 1; k < positions.Length; k++)
        {
            x += v;
            (pp, pv, vv) = (pp + 2 * pv + vv + lambda * lambda / 4, pv + vv + lambda * lambda / 2, vv + lambda * lambda);
            var (gainX, gainV, residual) = (pp / (pp + 1), pv / (pp + 1), positions[k] - x);
            (x, v) = (x + gainX * residual, v + gainV * residual);
            (pp, pv, vv) = ((1 - gainX) * pp, (1 - gainX) * pv, vv - gainV * pv);
            rates[k] = v / T;
        }

        return rates;
    }
}
