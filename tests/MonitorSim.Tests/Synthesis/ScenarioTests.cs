using System.Security.Cryptography;
using MonitorSim.Motion.Faults;
using MonitorSim.Synthesis;
using MonitorSim.Synthesis.Steps;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Synthesis;

public class ScenarioTests
{
    private static byte[] Bytes(Scenario scenario)
    {
        using var stream = new MemoryStream();
        TraceWriter.Write(scenario.ToTrace("x"), stream, PlannedTrace.DialectOf(scenario.Trace));
        return stream.ToArray();
    }

    private static double[] Values(Scenario scenario, string column) => ProfileMotionTests.Values(scenario.ToTrace("x"), column);

    private static string Example(string name) => Path.Combine(ScenarioErrorTests.Examples(), name);

    /// <summary>An axis that stands at 1 m (or what the column says) for 10 samples at 1 kHz.</summary>
    private static Scenario Standing(ScenarioColumn column, string speed = "1 m/s") => new()
    {
        Rate = "1 kHz",
        Axes = new Dictionary<string, ScenarioAxis>
        {
            ["a"] = new() { Steps = [new RampStep { To = speed, Acceleration = "1000 m/s²" }, new HoldStep { For = "9 ms" }], Columns = new Dictionary<string, ScenarioColumn> { ["x"] = column } },
        },
    };

    [Theory]
    [InlineData("gate.json", "a58c6d2a8a368804d41e7600b8094f75f9e32700c3fb654cd39017bf2eab1df5")]
    [InlineData("worn-encoder.json", "eb16b5381a6baa5b457e302436451377e97b157fca851038e28429f5b6e50bcb")]
    [InlineData("coast-down.json", "3ac59d543b14e2434d43721747131b4b79c4c8b29912426089e4c1506887f7e5")]
    [InlineData("two-axes.json", "784f46a5d830a468114870beb1257b0780ba66078546dd0d8d380fbed4bc21a6")]
    public void Examples_give_the_same_bytes_everywhere(string name, string hash) => InCulture.Each(() =>
        Assert.Equal(hash, Convert.ToHexStringLower(SHA256.HashData(Bytes(ScenarioReader.Read(Example(name)))))));

    [Fact]
    public void Another_seed_changes_the_noise_and_nothing_else()
    {
        var scenario = ScenarioReader.Read(Example("worn-encoder.json"));
        var other = scenario with { Seed = 22 };
        Assert.Equal(Values(scenario, "angle"), Values(other, "angle"));
        Assert.NotEqual(Values(scenario, "speed"), Values(other, "speed"));
    }

    [Fact]
    public void A_scenario_is_the_serialised_form_of_a_profile()
    {
        var profile = Profile.At("1 kHz").From("10 mm").Signal("a", true).Noise("1 µm", 3).RampTo("20 mm/s", "1 m/s²").DropOut("3 ms").Hold("20 ms").Signal("a", false)
            .Sine("2 mm/s", "50 Hz", 2).Coast("1 m/s²", "0.1 s").MoveBy("1 mm", "0.1 m/s", "1 m/s²", "100 m/s³").MoveTo("0 mm", "0.1 m/s", "1 m/s²")
            .WrittenIn("mm", "mm/s").Resolution("0.1 µm").Resolution("0.01 mm/s");
        var direct = profile.ToTrace("x");
        var scenario = Scenario.Of(profile);
        var text = ScenarioWriter.Write(scenario);
        var back = ScenarioReader.Parse(text);
        Assert.Equal(text, ScenarioWriter.Write(back));
        foreach (var trace in new[] { scenario.ToTrace("x"), back.ToTrace("x") })
        {
            Assert.Equal(direct.Times.ToArray(), trace.Times.ToArray());
            Assert.Equal(direct.Columns.Select(column => (column.Name, column.Unit)), trace.Columns.Select(column => (column.Name, column.Unit)));
            foreach (var column in new[] { "position", "velocity" }) Assert.Equal(ProfileMotionTests.Values(direct, column), ProfileMotionTests.Values(trace, column));
            Assert.Equal(((WordColumn)direct.Find("a")!).Codes.ToArray(), ((WordColumn)trace.Find("a")!).Codes.ToArray());
        }
    }

    [Theory]
    [InlineData("gate.json")]
    [InlineData("coast-down.json")]
    [InlineData("worn-encoder.json")]
    [InlineData("two-axes.json")]
    public void What_is_written_reads_back_as_the_same_scenario(string name)
    {
        var scenario = ScenarioReader.Read(Example(name));
        var back = ScenarioReader.Parse(ScenarioWriter.Write(scenario));
        Assert.Equal(ScenarioWriter.Write(scenario), ScenarioWriter.Write(back));
        Assert.Equal(Bytes(scenario), Bytes(back));
    }

    [Fact]
    public void A_sine_is_its_closed_form()
    {
        var profile = Profile.At("1 kHz").RampTo("10 mm/s", "1 m/s²").Sine("5 mm", "2 Hz", 3).Hold("0.1 s");
        var trace = profile.ToTrace("x");
        var (position, velocity) = (ProfileMotionTests.Values(trace, "position"), ProfileMotionTests.Values(trace, "velocity"));
        const double Start = 0.010, Before = 0.00005;
        for (var k = 10; k <= 1510; k++)
        {
            var t = k * 1e-3 - Start;
            Assert.Equal(Before + 0.010 * t + 0.005 * (1 - Math.Cos(2 * Math.PI * 2 * t)), position[k], 1.0e-9);
            Assert.Equal(0.010 + 0.005 * 2 * Math.PI * 2 * Math.Sin(2 * Math.PI * 2 * t), velocity[k], 1.0e-9);
        }

        // Whole cycles leave nothing but the way at the speed before.
        Assert.Equal((0.00005m + 0.010m * 1.5m + 0.001m, 0.010m), (profile.Position, profile.Velocity));
        var halfway = Profile.At("1 kHz").Sine("-20 mm/s", "5 Hz").ToTrace("x");
        Assert.Equal(-2 * 0.020 / (2 * Math.PI * 5), ProfileMotionTests.Values(halfway, "position")[100], 1.0e-9);
    }

    [Fact]
    public void Decimal_angles_agree_with_doubles_and_are_exact_at_quarters()
    {
        for (var k = -50; k <= 250; k++)
        {
            var (sine, cosine) = DecimalAngles.SineAndCosine(k / 100m);
            Assert.Equal(Math.Sin(k / 100.0 * 2 * Math.PI), (double)sine, 1e-14);
            Assert.Equal(Math.Cos(k / 100.0 * 2 * Math.PI), (double)cosine, 1e-14);
            Assert.InRange(sine * sine + cosine * cosine - 1, -1e-26m, 1e-26m);
        }

        Assert.Equal([(0, 1), (1, 0), (0, -1), (-1, 0)], Enumerable.Range(0, 4).Select(quarter => DecimalAngles.SineAndCosine(quarter * 0.25m)));
    }

    public static TheoryData<ChannelFault, double[]> Faults => new()
    {
        { new StuckFault { From = "3 ms", Until = "6 ms" }, [0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1] },
        { new ReversedFault { From = "8 ms" }, [0, 1, 1, 1, 1, 1, 1, 1, -1, -1, -1] },
        { new ScaledFault { Factor = new(1, 2), Until = "2 ms" }, [0, 0.5, 1, 1, 1, 1, 1, 1, 1, 1, 1] },
        { new StepFault { By = "-20 mm/s", From = "9.5 ms" }, [0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0.98] },
        { new DriftFault { By = "0.1 m/s", Over = "4 ms", From = "6 ms" }, [0, 1, 1, 1, 1, 1, 1, 1.025, 1.05, 1.075, 1.1] },
        { new DropOutFault { From = "1 ms", Until = "3 ms" }, [0, double.NaN, double.NaN, 1, 1, 1, 1, 1, 1, 1, 1] },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Faults_act_from_their_moment_until_their_end(ChannelFault fault, double[] values) =>
        Assert.Equal(values, Values(Standing(new() { Of = ScenarioQuantity.Velocity, Faults = [fault] }), "x"));

    [Fact]
    public void A_stuck_column_shows_the_value_with_its_noise()
    {
        var noisy = new ScenarioColumn { Of = ScenarioQuantity.Velocity, Noise = "1 mm/s" };
        var (free, stuck) = (Values(Standing(noisy), "x"), Values(Standing(noisy with { Faults = [new StuckFault { From = "5 ms" }] }), "x"));
        Assert.Equal([.. free[..6], .. Enumerable.Repeat(free[5], 5)], stuck);
        Assert.NotEqual(1, free[5]);
    }

    [Fact]
    public void Rows_can_be_missing_and_change_no_other()
    {
        var scenario = Standing(new() { Of = ScenarioQuantity.Velocity, Noise = "1 mm/s" });
        var gap = scenario with { MissingRows = [["2 ms", "5 ms"]] };
        var whole = Values(scenario, "x");
        Assert.Equal([0, 1_000_000, .. Enumerable.Range(5, 6).Select(k => k * 1_000_000L)], gap.ToTrace("x").Times.ToArray());
        Assert.Equal([.. whole[..2], .. whole[5..]], Values(gap, "x"));
    }

    [Fact]
    public void Jitter_moves_the_moment_of_a_sample_and_its_time_with_it()
    {
        var steady = new Scenario
        {
            Rate = "1 kHz", Jitter = "0.4 ms",
            Axes = new Dictionary<string, ScenarioAxis> { ["a"] = new() { Steps = [new RampStep { To = "1 m/s", Acceleration = "1 m/s²" }] } },
        };
        var trace = steady.ToTrace("x");
        var times = trace.Times.ToArray();
        var off = times.Select((time, k) => time - k * 1_000_000L).ToArray();
        Assert.Equal((1001, 0L), (times.Length, times[0]));
        Assert.All(off, shift => Assert.InRange(shift, -400_000, 400_000));
        Assert.InRange(off.Average(), -4 * 400_000 / Math.Sqrt(3 * 1000), 4 * 400_000 / Math.Sqrt(3 * 1000));
        Assert.Contains(off, shift => shift < -380_000);
        Assert.Contains(off, shift => shift > 380_000);
        var velocity = ProfileMotionTests.Values(trace, "velocity");
        Assert.All(Enumerable.Range(0, 1000), k => Assert.Equal(times[k] * 1e-9, velocity[k], 1.0e-9));
        Assert.NotEqual(times, (steady with { Seed = 1 }).ToTrace("x").Times.ToArray());
    }

    [Fact]
    public void Torque_is_what_the_plant_takes()
    {
        var scenario = ScenarioReader.Parse("""
            { "scenario": 1, "rate": "100 Hz", "axes": { "a": { "motion": "linear",
              "plant": { "mass": "10 kg", "viscous": "4 N·s/m", "coulomb": "3 N", "load": "-2 N" },
              "steps": [ { "step": "hold", "for": "10 ms" }, { "step": "ramp", "to": "1 m/s", "acceleration": "50 m/s²" }, { "step": "hold", "for": "10 ms" }, { "step": "ramp", "to": "-1 m/s", "acceleration": "50 m/s²" } ],
              "columns": { "F": { "of": "torque", "unit": "N" }, "a": { "of": "acceleration" } } } } }
            """);
        Assert.Equal([2, 502, 507, 9, -491, -493, -498, -503, -5], Values(scenario, "F"));
        Assert.Equal([0, 50, 50, 0, -50, -50, -50, -50, 0], Values(scenario, "a"));
    }

    [Fact]
    public void Axes_that_end_sooner_keep_their_speed_and_signals_their_windows()
    {
        var trace = ScenarioReader.Parse("""
            { "scenario": 1, "rate": "10 Hz", "duration": "0.5 s", "signals": { "s": { "windows": [["0.1 s", "0.3 s"]] } },
              "axes": { "a": { "steps": [ { "step": "ramp", "to": "1 m/s", "acceleration": "10 m/s²" } ] }, "b": { "motion": "rotary", "from": "1 rad" } } }
            """).ToTrace("x");
        Assert.Equal(["a position", "a velocity", "b position", "b velocity", "s"], trace.Columns.Select(column => column.Name));
        Assert.Equal([0, 0.05, 0.15, 0.25, 0.35, 0.45], ProfileMotionTests.Values(trace, "a position"));
        Assert.Equal([1, 1, 1, 1, 1, 1], ProfileMotionTests.Values(trace, "b position"));
        Assert.Equal([0, 1, 1, 0, 0, 0], ((WordColumn)trace.Find("s")!).Codes.ToArray());
    }
}
