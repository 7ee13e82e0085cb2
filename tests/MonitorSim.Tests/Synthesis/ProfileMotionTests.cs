using MonitorSim.Quantities;
using MonitorSim.Synthesis;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Synthesis;

/// <summary>Motion against closed forms.</summary>
public class ProfileMotionTests
{
    internal static double[] Values(Trace trace, string column) => ((NumberColumn)trace.Find(column)!).Values.ToArray();

    [Fact]
    public void A_ramp_to_v_covers_v_squared_over_2a()
    {
        var profile = Profile.At("1 kHz").RampTo("0.25 m/s", "1 m/s²");
        Assert.Equal((0.25m, 0.03125m, 0.25m), (profile.Duration, profile.Position, profile.Velocity));
        var trace = profile.ToTrace("ramp");
        Assert.Equal(251, trace.Count);
        Assert.Equal(0.03125, Values(trace, "position")[^1]);
        Assert.Equal("m", trace.Find("position")!.Unit);
        Assert.Equal("m/s", trace.Find("velocity")!.Unit);
        for (var k = 0; k <= 250; k++)
        {
            Assert.Equal(double.Parse($"{k}e-3", System.Globalization.CultureInfo.InvariantCulture), Values(trace, "velocity")[k]);
            Assert.Equal(new Fractions.Fraction(k * k, 2_000_000), ((NumberColumn)trace.Find("position")!).Exact(k));
        }
    }

    [Fact]
    public void Slowing_down_and_turning_round_take_the_time_of_the_whole_change()
    {
        var profile = Profile.At("1 kHz").From("10 mm").RampTo("0.2 m/s", "2 m/s²").Hold("0.5 s").RampTo("-0.2 m/s", "4 m/s²").RampTo("0 m/s", "1 m/s²");
        Assert.Equal(0.1m + 0.5m + 0.1m + 0.2m, profile.Duration);

        // 10 mm up, 100 mm steady, nothing while turning round, 20 mm back.
        Assert.Equal(0.010m + 0.010m + 0.100m + 0 - 0.020m, profile.Position);
        Assert.Equal(0, profile.Velocity);
    }

    [Theory]
    [InlineData("20 mm", "0.1 m/s", "1 m/s²", "20 m/s³", 0.2 + 0.1 + 0.05)] // all limits: D/v + v/a + a/j
    [InlineData("-20 mm", "0.1 m/s", "1 m/s²", "20 m/s³", 0.2 + 0.1 + 0.05)]
    [InlineData("20 mm", "0.1 m/s", "1 m/s²", null, 0.2 + 0.1)] // no jerk limit: D/v + v/a
    [InlineData("1 mm", "0.1 m/s", "1 m/s²", null, 0.0632455532033676)] // and no cruise: 2·√(D/a)
    [InlineData("16 mm", "1 m/s", "10 m/s²", "1000 m/s³", 0.09062257748298549)] // acceleration, no cruise: J + √(J² + 4D/a)
    [InlineData("2 mm", "1 m/s", "10 m/s²", "1000 m/s³", 0.04)] // neither: 4·∛(D/2j)
    [InlineData("100 mm", "0.1 m/s", "10 m/s²", "10 m/s³", 1 + 0.2)] // speed, not acceleration: D/v + 2·√(v/j)
    public void A_move_takes_its_closed_form_and_ends_exactly_there(string distance, string speed, string acceleration, string? jerk, double duration)
    {
        var profile = Profile.At("1 kHz").MoveBy(distance, speed, acceleration, jerk);
        Assert.Equal(duration, (double)profile.Duration, 1e-14);
        Assert.Equal(Quantity.Parse(distance).Si, (double)profile.Position);
        Assert.Equal(0, profile.Velocity);

        // Ends where its phases end too, but for the last digits of 28.
        var last = profile.Motion.Phases[^1];
        Assert.InRange(last.PositionAt(last.Duration) - profile.Position, -1e-24m, 1e-24m);
        Assert.InRange(last.VelocityAt(last.Duration), -1e-24m, 1e-24m);
        Assert.Equal(Quantity.Parse(distance).Si, Values(profile.Hold("10 ms").ToTrace("move"), "position")[^1]);
    }

    /// <summary>Durations and peaks as in L. Biagiotti, C. Melchiorri, Trajectory Planning for Automatic Machines and Robots, Springer 2008, on trapezoidal and
    /// double-S profiles (from memory): with h the way, T = h/v + v/a, or 2·√(h/a) with the peak √(h·a); with a jerk limit T = h/v + v/a + a/j; where the speed is not
    /// reached, the peak v solves v²/a + v·a/j = h, and where the acceleration is not reached either, v = j·∛(h/2j)² and T = 4·∛(h/2j).</summary>
    [Theory]
    [InlineData("1 m", "0.5 m/s", "1 m/s²", null, 2.5, 0.5)]
    [InlineData("0.16 m", "0.5 m/s", "1 m/s²", null, 0.8, 0.4)]
    [InlineData("1 m", "0.5 m/s", "1 m/s²", "4 m/s³", 2.75, 0.5)]
    [InlineData("0.3 m", "2 m/s", "1 m/s²", "4 m/s³", 1.3736102527122116, 0.4368051263561058)]
    [InlineData("2 mm", "2 m/s", "10 m/s²", "1000 m/s³", 0.04, 0.1)]
    public void A_move_has_the_duration_and_peak_of_the_textbook(string way, string speed, string acceleration, string? jerk, double duration, double peak)
    {
        var move = Profile.At("1 kHz").MoveBy(way, speed, acceleration, jerk);
        Assert.Equal(duration, (double)move.Duration, 1e-12);
        Assert.Equal(peak, move.Motion.Phases.Max(phase => (double)phase.VelocityAt(phase.Duration)), 1e-12);
    }

    [Fact]
    public void Limits_of_speed_acceleration_and_jerk_are_kept_and_phases_join()
    {
        var reached = new int[3];
        foreach (var distance in new[] { "0.1 mm", "1 mm", "5 mm", "20 mm", "333 mm", "2 m" })
        foreach (var speed in new[] { "0.03 m/s", "0.3 m/s", "3 m/s" })
        foreach (var (jerk, j) in new[] { ("7 m/s³", 7m), ("70 m/s³", 70m), ("7000 m/s³", 7000m) })
        {
            var profile = Profile.At("1 kHz").MoveBy(distance, speed, "2 m/s²", jerk);
            var v = (decimal)Quantity.Parse(speed).Si;
            const decimal Tiny = 1e-20m;
            decimal velocity = 0, acceleration = 0, position = 0;
            foreach (var phase in profile.Motion.Phases)
            {
                Assert.InRange(Math.Abs(phase.Jerk), 0, j);
                Assert.InRange(Math.Abs(phase.Acceleration - acceleration), 0, Tiny);
                Assert.InRange(Math.Abs(phase.Velocity - velocity), 0, Tiny);
                Assert.InRange(Math.Abs(phase.Position - position), 0, Tiny);
                (position, velocity, acceleration) = (phase.PositionAt(phase.Duration), phase.VelocityAt(phase.Duration), phase.Acceleration + phase.Jerk * phase.Duration);
                Assert.InRange(velocity, -Tiny, v + Tiny);
                Assert.InRange(acceleration, -2 - Tiny, 2 + Tiny);
                if (v - velocity < Tiny) reached[0]++;
                if (2 - acceleration < Tiny) reached[1]++;
            }

            Assert.InRange(Math.Abs(acceleration), 0, Tiny);
            if (profile.Motion.Phases.Count == 4) reached[2]++;
        }

        Assert.All(reached, count => Assert.True(count > 0));
    }

    [Fact]
    public void Times_do_not_accumulate_rounding()
    {
        var times = Profile.At("3 Hz").Hold("1 s").ToTrace("thirds").Times.ToArray();
        Assert.Equal([0, 333_333_333, 666_666_667, 1_000_000_000], times);
    }
}
