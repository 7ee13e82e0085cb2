using MonitorSim.Motion;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Motion;

/// <summary>Replays whose axes leave their recordings.</summary>
public sealed class SimulatedReplayTests
{
    // 1 s at rest, then 0.5 m/s for good: over the limit of 0.1 m/s from 1.001 s on.
    private static readonly double[] Speed = [.. Enumerable.Range(0, 3001).Select(k => k <= 1000 ? 0.0 : 500)];
    private static readonly double[] Place = [.. Enumerable.Range(0, 3001).Select(k => Math.Max(0, k - 1000) * 0.5)];

    private static Plan Limited(string stops, string reaction, string plant = "", string head = "", string motion = "simulated") => Bench.Plan($$"""
        "motion": "linear", "standstill": "1 mm/s", "channels": { {{Bench.Channels("pvaq")}} }, "stops": { "STO": {}, {{stops}} "SOS": { "window": "1 mm" } },
        "plant": { "mass": "10 kg", "limit": "200 N" {{plant}} },
        "monitors": [ { "name": "fast", "function": "SLS", "limit": "100 mm/s", "reaction": "{{reaction}}" } ]
        """, $""" "motion": "{motion}", "reactionDelay": "10 ms", {head} """);

    private static Trace Recording() => Bench.Milliseconds(("p", Place), ("v", Speed), ("a", new double[3001]), ("q", new double[3001]),
        ("reset", [.. Enumerable.Range(0, 3001).Select(k => k is >= 2000 and < 2100 ? 1.0 : 0)]));

    private const string Ramp = """ "SS1": { "variant": "r", "deceleration": "2 m/s²", "delay": "10 ms", "tolerance": "1 mm/s", "settle": "20 ms" }, """;

    /// <summary>0.5 m/s at 2 m/s²: 250 ms and 62.5 mm after the 10 ms of the reaction; then 20 ms of standstill.</summary>
    [Fact]
    public void TheAxisFollowsItsRamp()
    {
        var result = Replay.Run(Limited(Ramp, "stop 1"), Recording());
        Assert.Equal(["fast"], result.Trips.Select(trip => trip.Monitor));
        Assert.Equal([(1.001m, AxisState.StoppingToOff), (1.281m, AxisState.TorqueOff)], Changes(result));
        var motion = Assert.Single(result.Simulated);
        Assert.Equal(1.011m, motion.From);
        Assert.Equal(1.012, motion.States[0].Time, 1e-12);
        Assert.Equal(0.5 - 0.002, motion.States[0].Velocity, 1e-12);
        Assert.Equal(-2, motion.States[0].Acceleration);
        Assert.Equal(-20, motion.States[0].Torque);
        Assert.Equal(0.0055 + 0.0625, motion.States[^1].Position, 1e-9);
        Assert.Equal(0, motion.States[^1].Velocity);
        Assert.Contains(result.Events, e => e is { Time: 1.011m, Axis: "x", Source: "motion" });
        Assert.Contains(result.Warnings, warning => warning.Contains("1.011 s", StringComparison.Ordinal));
    }

    [Fact]
    public void TheRecordedMotionWouldHaveViolatedTheRamp() =>
        Assert.Contains(Replay.Run(Limited(Ramp, "stop 1", motion: "recorded"), Recording()).Trips, trip => trip is { Monitor: "SS1", Side: "ramp" });

    /// <summary>What would have avoided the trip is told of the recording: 0.5 m/s.</summary>
    [Fact]
    public void EvidenceIsThatOfTheRecording()
    {
        var avoided = Replay.Run(Limited(Ramp, "stop 1"), Recording()).Trips[0].AvoidedBy;
        Assert.Equal(new(0.5, 1.999m, null, true), avoided);
    }

    /// <summary>A drive of 10 N brakes 10 kg with 1 m/s², not with the 2 m/s² demanded: the ramp is violated and the torque goes off.</summary>
    [Fact]
    public void AWeakDriveViolatesItsRamp()
    {
        var plan = Limited(Ramp, "stop 1");
        var result = Replay.Run(plan with { Axes = new Dictionary<string, AxisPlan> { ["x"] = plan.Axes["x"] with { Plant = plan.Axes["x"].Plant! with { Limit = "10 N" } } } }, Recording());
        Assert.Contains(result.Trips, trip => trip is { Monitor: "SS1", Side: "ramp" });
        // Nothing brakes it any more: it coasts on.
        Assert.InRange(result.Simulated[0].States[^1].Velocity, 0.4, 0.5);
    }

    /// <summary>The brake closes 50 ms after torque off and stops 10 kg with 100 N: 0.5 m/s within 50 ms.</summary>
    [Fact]
    public void TheBrakeClosesAfterItsTime()
    {
        var result = Replay.Run(Limited("", "stop 0", """ , "brake": { "torque": "100 N", "apply": "50 ms" } """), Recording());
        var states = result.Simulated[0].States;
        Assert.Equal(0.5, states.Last(state => state.Time < 1.0615).Velocity, 1e-12);
        Assert.Equal(0.5 - 0.01, states.First(state => state.Time > 1.0615).Velocity, 1e-9);
        Assert.Equal(0, states.First(state => state.Time > 1.1115).Velocity);
    }

    /// <summary>After the acknowledgement it stays where it is; what the recording does has no meaning any more.</summary>
    [Fact]
    public void AcknowledgedItHoldsStill()
    {
        var result = Replay.Run(Limited(Ramp, "stop 1", head: """ "signals": { "reset": { "column": "reset" } }, "acknowledge": { "signal": "reset" }, """), Recording());
        Assert.Equal([AxisState.StoppingToOff, AxisState.TorqueOff, AxisState.Running], Changes(result).Select(change => change.State));
        Assert.Single(result.Trips);
        Assert.Equal(0.068, result.Simulated[0].States[^1].Position, 1e-9);
    }

    [Fact]
    public void ALateAcknowledgementComesLater()
    {
        var plan = Limited(Ramp, "stop 1", head: """ "signals": { "reset": { "column": "reset" } }, "acknowledge": { "signal": "reset" }, """);
        var result = Replay.Run(plan, Recording(), [new LateAcknowledgement("250 ms")]);
        Assert.Equal((2.35m, AxisState.Running), Changes(result)[^1]);
    }

    /// <summary>A runaway of 200 N takes 10 kg from rest to 100 mm/s within 5 ms; the drive acts 10 ms after the trip, with 2 m/s². But by then the speed lies
    /// above the ramp that began at the trip: torque off follows, and nothing brakes any more.</summary>
    [Fact]
    public void ARunawayLeavesTheRecordingAtOnce()
    {
        var result = Replay.Run(Limited(Ramp, "stop 1"), Recording(), [new MachineInjection("x", new RunawayFault { From = "500.5 ms" })]);
        Assert.Equal(0.5005m, result.Simulated[0].From);
        Assert.Equal(0.506m, result.Trips[0].Time);
        Assert.Equal(20 * 0.0155, result.Simulated[0].States.Max(state => state.Velocity), 1e-9);
        Assert.Contains(result.Trips, trip => trip is { Monitor: "SS1", Side: "ramp", Time: 0.507m });
        Assert.Equal(20 * 0.0155 - 2 * 0.001, result.Simulated[0].States[^1].Velocity, 1e-9);
    }

    [Fact]
    public void ADriveThatIgnoresTheRampIsCaught()
    {
        var result = Replay.Run(Limited(Ramp, "stop 1"), Recording(), [new MachineInjection("x", new IgnoredRampFault())]);
        Assert.Contains(result.Trips, trip => trip is { Monitor: "SS1", Side: "ramp", Time: 1.012m });
        Assert.Equal((1.012m, AxisState.TorqueOff), Changes(result)[^1]);
    }

    /// <summary>A stuck speed sensor never trips; one that shows three times the speed trips where the axis stands allowed.</summary>
    [Fact]
    public void FaultsOfChannels()
    {
        var plan = Limited(Ramp, "stop 1", motion: "recorded");
        Assert.Empty(Replay.Run(plan, Recording(), [new ChannelInjection("x", Kind.Velocity, new StuckFault { From = "900 ms" })]).Trips);
        var slow = Bench.Milliseconds(("p", Place), ("v", [.. Speed.Select(v => v / 10)]), ("a", new double[3001]), ("q", new double[3001]));
        Assert.Empty(Replay.Run(plan, slow).Trips);
        var trip = Replay.Run(plan, slow, [new ChannelInjection("x", Kind.Velocity, new ScaledFault { Factor = 3, From = "1.5 s" })]).Trips[0];
        Assert.Equal(1.5m, trip.Time);
        Assert.Equal(0.15, trip.Value!.Value, 1e-12);
    }

    [Fact]
    public void FaultsThatDoNotFitAreErrors()
    {
        var wrong = Assert.Throws<InputException>(() => Replay.Run(Limited(Ramp, "stop 1", motion: "recorded"), Recording(),
            [new MachineInjection("x", new OpenBrakeFault()), new ChannelInjection("y", Kind.Velocity, new StuckFault()), new ChannelInjection("x", Kind.Temperature, new StuckFault()), new LateAcknowledgement("1 s"),
             new ChannelInjection("x", Kind.Velocity, new DropOutFault())]));
        Assert.Equal(5, wrong.Problems.Count);
    }

    /// <summary>Units and ranges are those of a plan; a result says what was injected.</summary>
    [Theory]
    [InlineData("x.velocity step by 5 deg", "unit 'deg' is no linear speed")]
    [InlineData("x.position drift by 5 mm over 0 s", "over: '0 s' is not above 0")]
    [InlineData("x.velocity stuck from -1 s", "from: '-1 s' is below 0")]
    [InlineData("x.velocity stuck from 2 s until 1 s", "until: '1 s' is not after its beginning")]
    public void MembersOfFaultsAreChecked(string fault, string message) =>
        Assert.Contains(message, Assert.Throws<InputException>(() => Replay.Run(Limited(Ramp, "stop 1"), Recording(), [Injection.Parse(fault)])).Message);

    /// <summary>Every fault of a recorded channel, and what the monitor of the speed then makes of it.</summary>
    [Theory]
    [InlineData("x.velocity stuck from 0.9 s", null)]
    [InlineData("x.velocity scaled factor 0.1", null)]
    [InlineData("x.velocity reversed from 1.5 s", 1.001)]
    [InlineData("x.velocity step by 150 mm/s from 0.5 s", 0.5)]
    [InlineData("x.velocity drift by 150 mm/s over 100 ms from 0.5 s", 0.567)]
    [InlineData("x.velocity dropOut from 0.5 s until 0.51 s", 0.5)]
    public void EveryFaultOfAChannel(string fault, double? tripsAt)
    {
        var plan = Limited(Ramp, "stop 1", motion: "recorded") with { Missing = MissingPolicy.Trip };
        var result = Replay.Run(plan, Recording(), [Injection.Parse(fault)]);
        Assert.Equal((decimal?)tripsAt, result.Trips.Where(trip => trip.Monitor == "fast").Select(trip => (decimal?)trip.Time).FirstOrDefault());
        Assert.Contains($"injected, not recorded: {Injection.Parse(fault).Text}", result.Warnings);
    }

    /// <summary>Without torque from 1.2 s on, at 0.5 m/s, there is nothing to brake with: the stop is not followed.</summary>
    [Fact]
    public void ALossOfTorque()
    {
        var slow = Bench.Milliseconds(("p", Place), ("v", [.. Speed.Select(v => v / 10)]), ("a", new double[3001]), ("q", new double[3001]));
        var result = Replay.Run(Limited("", "stop 0", """ , "coulomb": "1 N" """), slow, [Injection.Parse("x torqueLoss from 1.2 s")]);
        Assert.Equal(1.2m, result.Simulated[0].From);
        Assert.Equal(0.05, result.Simulated[0].Start.Velocity, 1e-12);
        // 1 N on 10 kg: 0.05 m/s lasts 0.5 s.
        Assert.Equal(0.01, result.Simulated[0].States.First(state => state.Time >= 1.6).Velocity, 1e-9);
        Assert.Equal(0, result.Simulated[0].States.First(state => state.Time > 1.7005).Velocity);
    }

    [Fact]
    public void ABrakeThatDoesNotClose()
    {
        var plan = Limited("", "stop 0", """ , "brake": { "torque": "100 N", "apply": "50 ms" } """);
        Assert.Equal(0.5, Replay.Run(plan, Recording(), [Injection.Parse("x openBrake")]).Simulated[0].States[^1].Velocity);
    }

    /// <summary>Sample by sample it gives the same bits, simulated or not.</summary>
    [Fact]
    public void TheSessionGivesTheSame()
    {
        var plan = Limited(Ramp, "stop 1");
        var session = new ReplaySession(plan);
        for (var k = 0; k < Speed.Length; k++)
            session.Step(k * 1_000_000L, new Dictionary<string, double> { ["p"] = Place[k], ["v"] = Speed[k], ["a"] = 0, ["q"] = 0 });
        Assert.Equal(global::MonitorSim.Replays.ResultJson.Text(Replay.Run(plan, Recording())), global::MonitorSim.Replays.ResultJson.Text(session.Finish("array")));
    }

    /// <summary>Every fourth worked case, with a plant: the same bits up to the moment at which an axis leaves its recording, and all of them where none does.</summary>
    [SkippableTheory]
    [InlineData("basic")]
    [InlineData("full")]
    public void UntilThenItIsTheRecordedReplay(string suite)
    {
        var folder = Path.Combine(SharedFolder.Cases ?? "", suite);
        Skip.IfNot(Directory.Exists(folder), $"the worked cases are not here: {folder}");
        var (left, stayed) = (0, 0);
        foreach (var place in Directory.GetDirectories(folder).Where(place => File.Exists(Path.Combine(place, "expected.json"))).Order(StringComparer.Ordinal).Where((_, index) => index % 4 == 0))
        {
            var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
            var trace = PlannedTrace.Read(plan, Path.Combine(place, "trace.csv"));
            var simulated = plan with { Motion = MotionSource.Simulated, Axes = plan.Axes.ToDictionary(axis => axis.Key, axis => axis.Value with { Plant = APlant(axis.Value.Motion) }) };
            var (before, after) = (Replay.Run(plan, trace), Replay.Run(simulated, trace));
            if (after.Simulated.Count == 0)
            {
                Assert.Equal(global::MonitorSim.Replays.ResultJson.Text(before), global::MonitorSim.Replays.ResultJson.Text(after));
                stayed++;
                continue;
            }

            left++;
            var end = after.Simulated.Min(motion => motion.From);
            Assert.Equal(before.Trips.Where(trip => trip.Time <= end), after.Trips.Where(trip => trip.Time <= end));
            Assert.Equal(before.Events.Where(e => e.Time <= end), after.Events.Where(e => e.Time <= end && e.Source != "motion"));
            Assert.Equal(before.States.SelectMany(s => s.Changes).Where(c => c.Time <= end), after.States.SelectMany(s => s.Changes).Where(c => c.Time <= end));
        }

        Assert.True(left > 10 && stayed > 3, $"{left} left, {stayed} stayed");
    }

    private static PlantPlan APlant(AxisMotion motion) => motion == AxisMotion.Rotary
        ? new() { Inertia = "0.1 kg·m²", Coulomb = "0.2 N·m", Viscous = "0.01 N·m·s/rad", Limit = "20 N·m" }
        : new() { Mass = "50 kg", Coulomb = "20 N", Viscous = "10 N·s/m", Limit = "500 N", Load = "-5 N", Brake = new() { Torque = "800 N", Apply = "20 ms" } };

    private static (decimal Time, AxisState State)[] Changes(ReplayResult result) => [.. result.States.SelectMany(s => s.Changes).Select(change => (change.Time, change.State))];
}
