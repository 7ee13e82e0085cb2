using System.Globalization;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;
using MonitorSim.Tests.Traces;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Standards;

/// <summary>A lift ride, acceleration by telephone at about 48 Hz with jitter.</summary>
/// <remarks>Source: github PabRod/elevator-tool, commit e5b24c6 (Apache-2.0). Published there: mean (g) 10.31 m/s², height 74.30 m, top speed 4.01 m/s, largest
/// acceleration 0.93 m/s² for the ride from 4.555 to 34.926 s; recomputed by trapezoids 10.308, 74.28, 4.007 and 0.932.</remarks>
public class LiftRideTests
{
    private const string Ride = """ "gap": "1 s", "signals": { "ride": { "windows": [["4.555 s", "34.9260001 s"]] } }, """;

    private static ReplayResult Accelerations(string limits)
    {
        var plan = Bench.Plan($$"""
            "motion": "linear", "stops": { "STO": {} }, "channels": { "acceleration": { "column": "accz_m_s2", "unit": "m/s²", "offset": "-10.308 m/s²" } },
            "monitors": [ { "name": "m", "request": "ride", "reaction": "none", {{limits}} } ]
            """, Ride);
        return Replay.Run(plan, PlannedTrace.Read(plan, SharedFolder.Recording("elevator/ride_up.csv")));
    }

    [SkippableFact]
    public void Limited_acceleration_at_the_published_largest_one()
    {
        var headroom = Assert.Single(Accelerations(""" "function": "SLA", "limit": "1 m/s²" """).Headroom);
        Assert.Equal(0.932, headroom.Critical!.Value, 5e-4);
        Assert.Equal(13.544m, headroom.Time);
        var largest = (decimal)headroom.Critical.Value;
        Assert.Empty(Accelerations($""" "function": "SLA", "limit": "{Text(largest)} m/s²" """).Trips);
        Assert.Equal(13.544m, Assert.Single(Accelerations($""" "function": "SLA", "limit": "{Text(largest - 0.0000001m)} m/s²" """).Trips).Time);
    }

    [SkippableTheory]
    [InlineData("4.01 m/s", false)]
    [InlineData("4.006 m/s", true)]
    public void Limited_speed_at_the_published_top_speed(string limit, bool trips)
    {
        var (trace, gravity, height) = Trapezoids();
        Assert.Equal(10.308, gravity, 5e-4);
        Assert.Equal(10.31, gravity, 5e-3);

        // Height goes with half the square of the ride's 30.371 s: the last digit of g alone, 0.5 mm/s², makes 0.23 m.
        Assert.Equal(74.30, height, 0.23);

        var plan = Bench.Plan($$"""
            "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "m/s" } },
            "monitors": [ { "name": "m", "function": "SLS", "limit": "{{limit}}", "reaction": "none" } ]
            """, """ "gap": "1 s", """);
        var result = Replay.Run(plan, trace);
        Assert.Equal(trips, result.IsTripped);
        Assert.Equal(4.007, result.Headroom.Single().Critical!.Value, 1e-3);
    }

    // Up, then slowing down: acceleration and deceleration are seen in their own quadrants.
    [SkippableFact]
    public void Speeding_up_and_slowing_down_are_told_apart()
    {
        var (trace, _, _) = Trapezoids();
        var plan = Bench.Plan("""
            "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "m/s" }, "acceleration": { "column": "a", "unit": "m/s²" } },
            "monitors": [ { "name": "m", "function": "SLA", "limit": "2 m/s²", "deceleration": "2 m/s²", "reaction": "none" } ]
            """, """ "gap": "1 s", """);
        var headroom = Replay.Run(plan, trace).Headroom;
        Assert.Equal(0.932, headroom.Single(h => h.Side == "upper").Critical!.Value, 5e-4);
        Assert.Equal(0.909, headroom.Single(h => h.Side == "deceleration").Critical!.Value, 5e-4);
        Assert.InRange(headroom.Single(h => h.Side == "deceleration").Time!.Value, 20m, 34.926m - 4.555m);
    }

    private static string Text(decimal value) => value.ToString("0.#########", CultureInfo.InvariantCulture);

    /// <summary>The ride alone, from 0 s: acceleration without gravity (its mean by trapezoids), speed by trapezoids; and the height, the same way.</summary>
    private static (Trace Ride, double Gravity, double Height) Trapezoids()
    {
        var trace = TraceReader.Read(SharedFolder.Recording("elevator/ride_up.csv"));
        var samples = Enumerable.Range(0, trace.Count).Where(k => trace.Times[k] is >= 4_555_000_000 and <= 34_926_000_000).ToArray();
        double[] seconds = [.. samples.Select(k => trace.Times[k] / 1e9)], raw = [.. samples.Select(k => trace.Numbers("accz_m_s2")[k])];
        var gravity = Integral(seconds, raw)[^1] / (seconds[^1] - seconds[0]);
        double[] acceleration = [.. raw.Select(a => a - gravity)];
        var speed = Integral(seconds, acceleration);
        long[] times = [.. samples.Select(k => trace.Times[k] - trace.Times[samples[0]])];
        return (Bench.At(times, ("a", acceleration), ("v", speed)), gravity, Integral(seconds, speed)[^1]);
    }

    private static double[] Integral(double[] times, double[] values)
    {
        var integral = new double[times.Length];
        for (var k = 1; k < times.Length; k++) integral[k] = integral[k - 1] + (times[k] - times[k - 1]) * (values[k] + values[k - 1]) / 2;
        return integral;
    }
}
