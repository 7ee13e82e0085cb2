using MonitorSim.Synthesis;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Synthesis;

/// <summary>What is in the recording beside the motion.</summary>
public class ProfileTraceTests
{
    private static double[] Values(Trace trace, string column) => ProfileMotionTests.Values(trace, column);

    private static string Words(Trace trace, string signal)
    {
        var column = (WordColumn)trace.Find(signal)!;
        return string.Concat(column.Codes.ToArray().Select(code => column.Words[code][0]));
    }

    [Fact]
    public void Signals_change_at_the_moment_at_which_they_are_written()
    {
        var trace = Profile.At("1 kHz").Hold("2 ms").Signal("gateOpen", true).Hold("1.5 ms").Signal("gateOpen", false).Signal("reset", true).Hold("1.5 ms").ToTrace("x");
        Assert.Equal(["position", "velocity", "gateOpen", "reset"], trace.Columns.Select(column => column.Name));
        Assert.Equal("ffttff", Words(trace, "gateOpen"));
        Assert.Equal("fffftt", Words(trace, "reset"));
    }

    [Fact]
    public void A_drop_out_leaves_its_cells_empty_and_the_motion_going()
    {
        var trace = Profile.At("1 kHz").RampTo("10 mm/s", "1 m/s²").DropOut("3 ms").Hold("5 ms").ToTrace("x");
        foreach (var column in trace.Columns)
            Assert.Equal([10, 11, 12], Enumerable.Range(0, trace.Count).Where(column.IsMissing));
        Assert.Equal(0.00005 + 0.00005, Values(trace, "position")[15]);
    }

    [Fact]
    public void Values_are_rounded_to_the_resolution_halves_away_from_zero()
    {
        var trace = Profile.At("1 kHz").Resolution("2 mm/s").Resolution("1 µm").RampTo("-6 mm/s", "1 m/s²").ToTrace("x");
        Assert.Equal([0, -0.002, -0.002, -0.004, -0.004, -0.006, -0.006], Values(trace, "velocity"));
        Assert.Equal([0, -1e-6, -2e-6, -5e-6, -8e-6, -1.3e-5, -1.8e-5], Values(trace, "position"));
    }

    [Fact]
    public void Noise_has_its_deviation_and_depends_on_seed_and_sample_only()
    {
        static Profile Noisy(int seed) => Profile.At("10 kHz").Hold("1 s").Noise("0.1 mm/s", seed).Hold("2 s");
        var velocity = Values(Noisy(7).ToTrace("x"), "velocity");
        Assert.Equal(velocity, Values(Noisy(7).ToTrace("x"), "velocity"));
        Assert.All(velocity.Take(10_000), v => Assert.Equal(0, v));
        var noise = velocity.Skip(10_000).ToArray();
        Assert.NotEqual(noise, Values(Noisy(8).ToTrace("x"), "velocity").Skip(10_000));

        // 20,001 draws: mean within 4 standard errors, deviation within 3 %.
        Assert.InRange(noise.Average(), -4e-4 / Math.Sqrt(20_001), 4e-4 / Math.Sqrt(20_001));
        Assert.InRange(Math.Sqrt(noise.Average(v => v * v)), 0.97e-4, 1.03e-4);
        Assert.InRange(noise.Max(Math.Abs), 3e-4, 6e-4);
        Assert.All(Values(Noisy(7).ToTrace("x"), "position"), p => Assert.Equal(0, p));

        // What comes before does not move the noise that comes later.
        var later = Values(Profile.At("10 kHz").RampTo("5 mm/s", "0.005 m/s²").RampTo("0 mm/s", "1 m/s²").Noise("0.1 mm/s", 7).Hold("2 s").ToTrace("x"), "velocity");
        Assert.Equal(velocity[15_000], later[15_000]);
    }

    [Fact]
    public void Neighbouring_draws_are_not_related()
    {
        var noise = Enumerable.Range(0, 20_000).Select(k => (double)Noise.At(1, k)).ToArray();
        var neighbours = noise.Zip(noise.Skip(1), (a, b) => a * b).Average();
        var seeds = Enumerable.Range(0, 20_000).Select(k => noise[k] * (double)Noise.At(2, k)).Average();
        Assert.InRange(neighbours, -0.03, 0.03);
        Assert.InRange(seeds, -0.03, 0.03);
    }

    [Fact]
    public void A_rotary_profile_can_be_written_in_degrees_on_an_exact_grid()
    {
        var trace = Profile.At("100 Hz").WrittenIn("deg", "deg/s").Resolution("0.1 deg").RampTo("30 deg/s", "100 deg/s²").Hold("0.1 s").ToTrace("turn");
        Assert.Equal(("deg", "deg/s"), (trace.Find("position")!.Unit, trace.Find("velocity")!.Unit));
        Assert.Equal(7.5, Values(trace, "position")[^1]);
        Assert.Equal(30, Values(trace, "velocity")[^1]);
        Assert.Equal("rad/s", Profile.At("1 kHz").RampTo("30 rpm", "1 rad/s²").ToTrace("si").Find("velocity")!.Unit);
    }

    [Fact]
    public void Another_culture_changes_nothing() => InCulture.Each(() =>
        Assert.Equal(0.00125, Values(Profile.At("1 kHz").RampTo("0,05 m/s", "1 m/s²").ToTrace("x"), "position")[^1]));

    public static TheoryData<Func<Profile, Profile>, string> Mistakes => new()
    {
        { p => p.RampTo("40 mm", "1 m/s²"), "profile.RampTo(speed): '40 mm' is no linear speed or rotary speed; would do: mm/s, m/s, m/min, rpm, deg/s, rad/s, rev/s" },
        { p => p.RampTo("40 mm/s", "1 rad/s²"), "profile.RampTo(acceleration): '1 rad/s²' is no linear acceleration; would do: mm/s², m/s²" },
        { p => p.RampTo("40 mm/s", "0 m/s²"), "profile.RampTo(acceleration): '0 m/s²' is not more than 0; give a value above 0" },
        { p => p.Hold("-1 ms"), "profile.Hold(duration): '-1 ms' is negative; give 0 or more" },
        { p => p.Hold("1 mm"), "profile.Hold(duration): '1 mm' is no duration; would do: ms, s, us, min" },
        { p => p.MoveBy("1 mm", "1 m/s", "1 m/s²", "1 m/s²"), "profile.MoveBy(jerk): '1 m/s²' is no linear jerk; would do: mm/s³, m/s³" },
        { p => p.RampTo("1 mm/s", "1 m/s²").MoveBy("1 mm", "1 m/s", "1 m/s²"), "profile.MoveBy(distance): the axis still moves when the move begins, at 0.001 s; RampTo a speed of 0 first" },
        { p => p.Hold("1 s").From("1 mm"), "profile.From(position): the profile is 1 s long already; say where it begins before anything else" },
        { p => p.Signal("velocity", true), "profile.Signal(name): 'velocity' cannot name a signal; give it a name of its own, such as gateOpen" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void Mistakes_are_explained(Func<Profile, Profile> mistake, string message) =>
        Assert.Equal(message, Assert.Throws<InputException>(() => mistake(Profile.At("1 kHz"))).Message);
}
