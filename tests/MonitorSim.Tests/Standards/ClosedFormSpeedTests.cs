using System.Globalization;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;
using MonitorSim.Tests.Traces;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Standards;

/// <summary>Two joints of a robot whose speed is known in closed form: when limits are crossed, by formula and by replay.</summary>
/// <remarks>
/// Source: C. Gaz, M. Cognetti, A. Oliva, P. Robuffo Giordano, A. De Luca, IEEE RA-L 2019; github marcocognetti/FrankaEmikaPandaDynModel, commit 24d85ce (GPL-3;
/// the data stay outside). qd(t) = sum over l = 1..5 of a_l·cos(l·w·t) + b_l·sin(l·w·t), w = 0.15·pi, a in rows 1 to 7 and b in rows 8 to 14 of
/// <c>gen_params.txt</c>. The README beside the recording: it follows 0.525 s late (joint 6: 0.520 s), rms 0.0073 to 0.0097 rad/s from sample 3000 to 19044.
/// </remarks>
public class ClosedFormSpeedTests
{
    // The larger published rms.
    private const double Rms = 0.0097;
    // A little more than five times that: no sample of the stretch is further from the formula, which the first test holds.
    private const double Band = 0.05;
    // Samples 3000 to 19044.
    private const double From = 3.005, Until = 19.44;
    // How long around a crossing it is watched for, either way.
    private const double Near = 0.08;
    private const string Stretch = """ "signals": { "known": { "windows": [["3.005 s", "19.44 s"]] } }, """;

    private sealed record Joint(int Number)
    {
        private static readonly Dictionary<int, double[][]> Read = [];

        private double[][] Parameters => Read.TryGetValue(Number, out var known) ? known : Read[Number] = Rows();

        private double[][] Rows()
        {
            var rows = File.ReadAllLines(SharedFolder.Recording("panda/gen_params.txt")).Where(line => line.Trim().Length > 0)
                .Select(line => line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()).ToArray();
            return [rows[Number - 1], rows[Number + 6]];
        }

        public string Recording => SharedFolder.Recording($"panda/joint{Number}.csv");

        /// <summary>The speed at a time of the recording, rad/s.</summary>
        public double Speed(double time) => Sum(time, (l, w, angle) => Parameters[0][l] * Math.Cos(angle) + Parameters[1][l] * Math.Sin(angle));

        /// <summary>The acceleration, rad/s².</summary>
        public double Acceleration(double time) => Sum(time, (l, w, angle) => (l + 1) * w * (Parameters[1][l] * Math.Cos(angle) - Parameters[0][l] * Math.Sin(angle)));

        private double Sum(double time, Func<int, double, double, double> term)
        {
            const double w = 0.15 * Math.PI;
            var late = Number == 6 ? 0.520 : 0.525;
            return Enumerable.Range(0, 5).Sum(l => term(l, w, (l + 1) * w * (time - late)));
        }

        /// <summary>The times within the stretch at which the magnitude passes a limit, by bisection, and whether it rises there.</summary>
        public IEnumerable<(double Time, bool Rises)> Crossings(double limit)
        {
            double Above(double time) => Math.Abs(Speed(time)) - limit;
            const double step = 1e-3;
            for (var t = From; t + step < Until; t += step)
            {
                if (Above(t) > 0 == Above(t + step) > 0) continue;
                var (low, high, rises) = (t, t + step, Above(t) <= 0);
                for (var i = 0; i < 50; i++)
                {
                    var middle = (low + high) / 2;
                    if (Above(middle) > 0 == rises) high = middle;
                    else low = middle;
                }

                yield return (high, rises);
            }
        }

        public ReplayResult Replayed(string head, params string[] monitors)
        {
            var plan = Bench.Plan($$"""
                "motion": "rotary", "stops": { "STO": {} }, "channels": { "velocity": { "column": "qd_rad_s", "unit": "rad/s" } },
                "monitors": [ {{string.Join(", ", monitors)}} ]
                """, """ "gap": "1 s", """ + head);
            return Replay.Run(plan, PlannedTrace.Read(plan, Recording));
        }
    }

    [SkippableTheory]
    [InlineData(1)]
    [InlineData(6)]
    public void The_recording_follows_the_formula(int number)
    {
        var joint = new Joint(number);
        var trace = TraceReader.Read(joint.Recording);
        var speed = trace.Numbers("qd_rad_s");
        var distances = Enumerable.Range(3000, 16044).Select(k => speed[k] - joint.Speed(trace.Times[k] / 1e9)).ToArray();
        Assert.InRange(Math.Sqrt(distances.Average(d => d * d)), 0.0072, Rms + 0.00005);
        Assert.InRange(distances.Max(distance => Math.Abs(distance)), 0, Band);
    }

    // Where the formula is above limit + band the recording has to be above the limit, and where the recording is above, the formula is above limit - band.
    [SkippableTheory]
    [InlineData(1, 0.5, 1.2)]
    [InlineData(6, 0.3, 1.0)]
    public void Excursions_are_where_the_formula_says(int number, params double[] limits)
    {
        var joint = new Joint(number);
        var result = joint.Replayed(Stretch, [.. limits.Select(limit => Text($$"""{ "name": "{{limit}}", "function": "SLS", "request": "known", "limit": "{{limit}} rad/s", "reaction": "none" }"""))]);
        foreach (var limit in limits)
        {
            var excursions = result.Excursions.Where(e => e.Monitor == Text($"{limit}")).Select(e => (From: (double)e.From, Until: (double)e.Until)).ToArray();
            Assert.NotEmpty(excursions);
            for (var t = From; t < Until; t += 1e-3)
            {
                // Between two samples a crossing is not seen; the recording's longest step is 8.81 ms.
                var speed = Math.Abs(joint.Speed(t));
                if (excursions.Any(e => e.From <= t && t <= e.Until)) Assert.True(speed > limit - Band, $"{t} s: {speed} rad/s by the formula, above {limit} rad/s in the replay");
                if (speed > limit + Band)
                    Assert.True(excursions.Any(e => e.From - 0.00881 < t && t < e.Until + 0.00881), $"{t} s: {speed} rad/s by the formula, not above {limit} rad/s in the replay");
            }
        }
    }

    // A crossing is found with an error of noise/slope: four times the published rms (one normal sample in 16,000 is further away) over the acceleration there, and one
    // step between samples (about 1 ms). SLS sees the speed rise above the limit; SSR with a lower limit sees it fall below. Crossings flatter than 1 rad/s² are left out.
    [SkippableTheory]
    [InlineData(1, 20)]
    [InlineData(6, 10)]
    public void Trips_come_at_the_crossing_times(int number, int atLeast)
    {
        var joint = new Joint(number);
        var crossings = new[] { 0.5, 0.8, 1.2 }.SelectMany(limit => joint.Crossings(limit).Select(crossing => (limit, crossing.Time, crossing.Rises)))
            .Where(crossing => Math.Abs(joint.Acceleration(crossing.Time)) >= 1 && crossing.Time - Near > From && crossing.Time + Near < Until).ToArray();
        Assert.True(crossings.Length >= atLeast, $"only {crossings.Length} crossings");
        var windows = crossings.Select((crossing, i) => Text($$""" "near{{i}}": { "windows": [["{{crossing.Time - Near:0.000000}} s", "{{crossing.Time + Near:0.000000}} s"]] } """));
        var result = joint.Replayed($$""" "signals": { {{string.Join(", ", windows)}} }, """, [.. crossings.Select((crossing, i) => Text(
            $$"""{ "name": "{{i}}", "request": "near{{i}}", "reaction": "none", {{(crossing.Rises ? "\"function\": \"SLS\", \"limit\"" : "\"function\": \"SSR\", \"lower\"")}}: "{{crossing.limit}} rad/s" }"""))]);
        for (var i = 0; i < crossings.Length; i++)
        {
            var trip = Assert.Single(result.Trips, trip => trip.Monitor == Text($"{i}"));
            Assert.Equal(crossings[i].Rises ? "upper" : "lower", trip.Side);
            var tolerance = 4 * Rms / Math.Abs(joint.Acceleration(crossings[i].Time)) + 0.001;
            Assert.True(Math.Abs((double)trip.Time - crossings[i].Time) <= tolerance, $"{crossings[i]}: {trip.Time} s, {tolerance} s allowed");
        }
    }

    // The README beside the recording; at the peak is allowed, and the digit below it trips there.
    [SkippableTheory]
    [InlineData(1, 1.8092, 5.7004)]
    [InlineData(6, 1.7777, 12.7456)]
    public void The_peak_is_the_smallest_limit_that_does_not_trip(int number, double peak, double time)
    {
        var headroom = Assert.Single(new Joint(number).Replayed("", """{ "name": "m", "function": "SLS", "limit": "2 rad/s", "reaction": "none" }""").Headroom);
        Assert.Equal(peak, headroom.Critical!.Value, 5e-5);
        Assert.Equal(time, (double)headroom.Time!.Value, 1e-4);
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
