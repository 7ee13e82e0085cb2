using System.Diagnostics;
using MonitorSim.Monitors;
using MonitorSim.Motion;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Motion.Envelopes;

/// <summary>A fault at every sample of a recording.</summary>
public sealed class EnvelopeTests
{
    private static EnvelopeQuestion Question(string monitors, double[] speed, string plant = """ "mass": "10 kg", "limit": "200 N", "coulomb": "50 N" """, string head = "", string stops = "") => new()
    {
        Plan = Bench.Plan($$"""
            "motion": "linear", "channels": { {{Bench.Channels("pv")}} }, "stops": { "STO": {} {{stops}} }, "plant": { {{plant}} }, "monitors": [ {{monitors}} ]
            """, """ "reactionDelay": "10 ms", """ + head),
        Trace = Bench.Milliseconds(("p", Places(speed)), ("v", speed), ("g", [.. speed.Select((_, k) => k >= 100 ? 1.0 : 0)])),
        Axis = "x",
        Faults = [new RunawayFault()],
    };

    private static double[] Places(double[] speed)
    {
        var places = new double[speed.Length];
        for (var k = 1; k < places.Length; k++) places[k] = places[k - 1] + speed[k] * 1e-3;
        return places;
    }

    private const string Limit = """ { "name": "fast", "function": "SLS", "limit": "100 mm/s", "reaction": "stop 0" } """;

    /// <summary>From rest: 15 m/s² to 0.1 m/s, one cycle and the reaction delay more, then 5 m/s² to rest (derived).</summary>
    [Fact]
    public void ARunawayFromRest()
    {
        var point = Envelope.Of(Question(Limit, new double[200])).Points[100];
        var (peak, found) = (0.1 + 15 * 0.011, 0.1 / 15 + 0.001);
        StopTests.Close(found, point.DetectedAt!.Value);
        StopTests.Close(peak, point.PeakSpeed);
        StopTests.Close(peak * peak / 30 + peak * peak / 10, point.Distance);
        StopTests.Close(found + 0.01 + peak / 5, point.Time!.Value);
        StopTests.Close(5 * peak * peak, point.Energy);
        StopTests.Close(peak - 0.1, Assert.Single(point.Overruns).Amount);
        Assert.Null(point.Drop);
    }

    /// <summary>A filter of 2.5 ms is one of three cycles; an input that is 2 ms old is known 2 ms later.</summary>
    [Fact]
    public void FilterAndInputDelayCount()
    {
        var filtered = Limit.Replace("\"reaction\"", "\"filter\": \"2.5 ms\", \"reaction\"", StringComparison.Ordinal);
        var point = Envelope.Of(Question(filtered, new double[200], head: """ "inputDelay": "2 ms", """)).Points[100];
        StopTests.Close(0.1 / 15 + 0.001 + 0.003 + 0.002, point.DetectedAt!.Value);
    }

    /// <summary>What a replay of the same fault finds: never later than the envelope, and at most one cycle earlier.</summary>
    [Fact]
    public void ItAgreesWithTheReplay()
    {
        var speed = Enumerable.Range(0, 400).Select(k => 80 * Math.Sin(k / 60.0)).ToArray();
        var question = Question(Limit + """, { "name": "place", "function": "SLP", "lower": "-1 mm", "upper": "9.7 mm", "reaction": "stop 0" } """, speed);
        var upwards = question with { Faults = [new RunawayFault { Direction = RunawayDirection.Positive }] };
        var points = Envelope.Of(upwards).Points;
        foreach (var k in new[] { 3, 50, 120, 200, 333 })
        {
            var simulated = question.Plan with { Motion = MotionSource.Simulated };
            var fault = new MachineInjection("x", new RunawayFault { Direction = RunawayDirection.Positive, From = $"{k} ms" });
            var trip = Replay.Run(simulated, question.Trace, [fault]).Trips[0];
            Assert.Equal(trip.Monitor, points[k].Monitor);
            Assert.InRange(k / 1e3 + points[k].DetectedAt!.Value - (double)trip.Time, 0, 0.001 + 1e-9);
        }
    }

    /// <summary>Where nothing watches, nothing is found.</summary>
    [Fact]
    public void WhereNoLimitWatchesNothingIsFound()
    {
        var watched = Limit.Replace("\"limit\"", "\"request\": \"gate\", \"delay\": \"20 ms\", \"limit\"", StringComparison.Ordinal);
        var result = Envelope.Of(Question(watched, new double[200], head: """ "signals": { "gate": { "column": "g" } }, """));
        Assert.Equal(100, result.Undetected);
        // While it arms, the fault is found once it watches.
        StopTests.Close(0.02 + 0.001, result.Points[100].DetectedAt!.Value);
        Assert.Equal(0.1m, result.Worst.First(worst => worst.Figure == "peak speed").Point.At);
    }

    /// <summary>A drive that is too weak to lift its load runs away downwards only; upwards the axis stands, and that is not the worse of the two.</summary>
    [Fact]
    public void ARunawayThatGoesNowhereIsNotTheWorse()
    {
        var question = Question(Limit, new double[20], """ "mass": "10 kg", "limit": "90 N", "coulomb": "15 N", "load": "-98.1 N", "brake": { "torque": "200 N", "apply": "20 ms" } """);
        Assert.All(Envelope.Of(question).Points, point => Assert.Equal((-1, "fast"), (point.Direction, point.Monitor)));
        var upwards = Envelope.Of(question with { Faults = [new RunawayFault { Direction = RunawayDirection.Positive }, new TorqueLossFault()], Plan = Question(Limit, new double[1], """ "mass": "10 kg", "limit": "90 N", "coulomb": "5 N" """).Plan,
            Trace = Bench.Milliseconds(("p", new double[20]), ("v", [.. Enumerable.Repeat(50.0, 20)]), ("g", new double[20])) });
        // 0.05 m/s against 0.5 m/s²: no limit sees it, and it ends.
        Assert.Equal((20, 0, 0), (upwards.Harmless, upwards.Undetected, upwards.NotStopped));
        StopTests.Close(0.1, upwards.Worst.First(worst => worst.Figure == "time").Value);
    }

    /// <summary>References: how far it may go from where it began to stand, and against the permitted direction.</summary>
    [Theory]
    [InlineData(""" "function": "SOS", "window": "2 mm" """)]
    [InlineData(""" "function": "SLP", "upper": "2 mm" """)]
    [InlineData(""" "function": "SDI", "allow": "negative", "tolerance": "2 mm" """)]
    [InlineData(""" "function": "SLI", "increment": "2 mm" """)]
    public void PositionsAreWatched(string monitor)
    {
        var question = Question($$""" { "name": "m", {{monitor}}, "reaction": "stop 0" } """, new double[50]) with { Faults = [new RunawayFault { Direction = RunawayDirection.Positive }] };
        StopTests.Close(Math.Sqrt(2 * 0.002 / 15) + 0.001, Envelope.Of(question).Points[20].DetectedAt!.Value);
    }

    /// <summary>Torque and acceleration of a runaway are there at once.</summary>
    [Theory]
    [InlineData(""" "function": "SLT", "limit": "150 N" """)]
    [InlineData(""" "function": "STR", "upper": "150 N" """)]
    [InlineData(""" "function": "SAR", "upper": "9 m/s²" """)]
    [InlineData(""" "function": "SLA", "limit": "9 m/s²" """)]
    public void TorqueAndAccelerationAreWatched(string monitor)
    {
        var plan = Bench.Plan($$"""
            "motion": "linear", "channels": { {{Bench.Channels("vaq")}} }, "stops": { "STO": {} }, "plant": { "mass": "10 kg", "limit": "200 N", "coulomb": "50 N" },
            "monitors": [ { "name": "m", {{monitor}}, "reaction": "stop 0" } ]
            """);
        var question = new EnvelopeQuestion { Plan = plan, Axis = "x", Faults = [new RunawayFault { Direction = RunawayDirection.Positive }], Trace = Bench.Milliseconds(("v", new double[9]), ("a", new double[9]), ("q", new double[9])) };
        StopTests.Close(0.001, Envelope.Of(question).Points[5].DetectedAt!.Value);
    }

    /// <summary>Every function is either watched or known as one that only has an output, so that none is forgotten.</summary>
    [Fact]
    public void EveryFunctionIsKnown()
    {
        var watched = new HashSet<string> { "SAR", "SDI", "SLA", "SLI", "SLP", "SLS", "SLT", "SOS", "SSR", "STR" };
        Assert.Equal(["SCA", "SMT", "SSM"], MonitorTypes.Functions.Where(name => !watched.Contains(name)).Order(StringComparer.Ordinal));
    }

    /// <summary>Of two moments, up at 365 rad/s and down at 250 rad/s, a constant braking torque (as strong as the short circuit at its best) puts the worst stop where the
    /// axis is fastest. A short circuit is weakest at high speed, where going down it hardly overcomes the load: the worst stop is the slower one.</summary>
    [Theory]
    [InlineData(""" "brake": { "torque": "9.6 N·m" } """, 365)]
    [InlineData(""" "shortCircuit": { "resistance": "0.5 Ω", "inductance": "2 mH", "flux": "0.08 V·s", "polePairs": 4 } """, -250)]
    public void TheWorstFaultIsNotWhereAConstantTorquePutsIt(string braking, double worst)
    {
        double[] speed = [.. Enumerable.Range(0, 300).Select(k => k is >= 100 and < 150 ? 365.0 : k is >= 200 and < 250 ? -250 : 0)];
        var plan = Bench.Plan($$"""
            "motion": "rotary", "channels": { "velocity": { "column": "v", "unit": "rad/s" } }, "stops": { "STO": {} },
            "plant": { "inertia": "0.01 kg·m²", "coulomb": "5.2 N·m", "load": "-5 N·m", {{braking}} }
            """);
        var result = Envelope.Of(new() { Plan = plan, Axis = "x", Demand = Reaction.Stop0, Trace = Bench.Milliseconds(("v", speed)) });
        Assert.Equal(worst, result.Worst.First(figure => figure.Figure == "distance").Point.Velocity);
    }

    /// <summary>An envelope of 15,000 samples takes seconds.</summary>
    [Fact]
    public void FifteenThousandSamplesTakeSeconds()
    {
        var speed = Enumerable.Range(0, 15000).Select(k => 80 * Math.Sin(k / 600.0)).ToArray();
        var question = Question(Limit, speed, """ "mass": "10 kg", "limit": "200 N", "coulomb": "50 N", "viscous": "30 N·s/m", "load": "-98.1 N", "brake": { "torque": "250 N", "apply": "50 ms" } """);
        var percents = new List<int>();
        var watch = Stopwatch.StartNew();
        var result = Envelope.Of(question, new Percents(percents));
        Assert.True(watch.Elapsed.TotalSeconds < 60, $"{watch.Elapsed}");
        Assert.Equal(15000, result.Points.Count);
        Assert.Equal(Enumerable.Range(1, 100), percents.Order());
        Assert.True(result.Worst.First(worst => worst.Figure == "drop").Value > 0);
    }

    /// <summary>The result is the same on every run, whatever thread did which part.</summary>
    [Fact]
    public void ItIsTheSameEveryTime()
    {
        var question = Question(Limit, [.. Enumerable.Range(0, 500).Select(k => 80 * Math.Sin(k / 60.0))]);
        string Text() => string.Join('\n', Envelope.Of(question).Points.Select(point => FormattableString.Invariant($"{point.At} {point.Distance:R} {point.Time:R} {point.PeakSpeed:R}")));
        Assert.Equal(Text(), Text());
    }

    private sealed class Percents(List<int> reported) : IProgress<int>
    {
        public void Report(int value)
        {
            lock (reported) reported.Add(value);
        }
    }
}
