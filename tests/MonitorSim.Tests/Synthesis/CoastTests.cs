using MonitorSim.Synthesis;

namespace MonitorSim.Tests.Synthesis;

/// <summary>Coasting against the closed form of viscous and Coulomb friction.</summary>
public class CoastTests
{
    // J = 0.01 kg·m², b = 0.002 N·m·s/rad, Tc = 0.5 N·m, ω0 = 300 rad/s: t = (J/b)·ln(1 + b·ω0/Tc), θ = J·ω0/b - (J·Tc/b²)·ln(1 + b·ω0/Tc).
    private static Profile Blade(string speed) => Profile.At("1 kHz").RampTo(speed, "1e6 rad/s²").Coast("50 rad/s²", "5 s");

    [Theory]
    [InlineData("300 rad/s", 1)]
    [InlineData("-300 rad/s", -1)]
    public void It_takes_the_time_and_the_way_of_the_closed_form(string speed, int sign)
    {
        var start = Profile.At("1 kHz").RampTo(speed, "1e6 rad/s²");
        var profile = Blade(speed);
        Assert.Equal(3.9422868018, (double)(profile.Duration - start.Duration), 5e-11);
        Assert.Equal(sign * 514.4282995, (double)(profile.Position - start.Position), 5e-8);
        Assert.Equal(0, profile.Velocity);

        // The last phase ends there too, but for the last digits of 28.
        var last = profile.Motion.Phases[^1];
        Assert.InRange(last.VelocityAt(last.Duration), -1e-20m, 1e-20m);
        Assert.InRange(last.PositionAt(last.Duration) - profile.Position, -1e-20m, 1e-20m);
    }

    [Fact]
    public void Its_speed_follows_the_closed_form_and_its_equation_of_motion()
    {
        var phase = Blade("300 rad/s").Motion.Phases[^1];
        for (var t = 0m; t < phase.Duration; t += 0.1m)
        {
            var v = phase.VelocityAt(t);
            Assert.Equal((300 + 250) * Math.Exp(-(double)t / 5) - 250, (double)v, 1e-10);
            Assert.InRange(phase.AccelerationAt(t) + v / 5 + 50, -1e-20m, 1e-20m);
        }
    }

    [Fact]
    public void Without_viscous_friction_it_is_a_ramp()
    {
        var profile = Profile.At("1 kHz").RampTo("-0.25 m/s", "1 m/s²").Coast("1 m/s²");
        Assert.Equal((0.5m, -0.0625m, 0m), (profile.Duration, profile.Position, profile.Velocity));
        Assert.Equal(Profile.At("1 kHz").Duration, Profile.At("1 kHz").Coast("1 m/s²", "5 s").Duration);
    }

    [Theory]
    [InlineData(-70, 0)]
    [InlineData(-30, 9.3576229688401746e-14)]
    [InlineData(-0.3, 0.74081822068171788)]
    [InlineData(0, 1)]
    [InlineData(1, 2.7182818284590452)]
    [InlineData(30, 10686474581524.462)]
    public void Decimal_exponentials(double x, double expected)
    {
        Assert.Equal(expected, (double)DecimalExponential.Exp((decimal)x), 1e-15 * expected);
        if (x is >= 0 and < 60) Assert.InRange(DecimalExponential.Log(DecimalExponential.Exp((decimal)x)) - (decimal)x, -1e-23m, 1e-23m);
    }

    [Fact]
    public void E_to_25_digits() => Assert.InRange(DecimalExponential.Exp(1) - 2.7182818284590452353602874714m, -1e-25m, 1e-25m);
}
