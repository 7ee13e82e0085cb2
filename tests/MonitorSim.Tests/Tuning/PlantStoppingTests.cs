using MonitorSim.Cli;
using MonitorSim.Motion;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Tests.Motion;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>The room of a limit with the plan's plant: how the axis stops is simulated, not estimated.</summary>
public sealed class PlantStoppingTests
{
    /// <summary>Coulomb friction alone is a constant deceleration: the same chain, to the last figure.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.02)]
    public void DryFrictionIsAConstantDeceleration(double reactionDelay)
    {
        var plant = new Plant { Inertia = 10, Coulomb = 15 };
        var stopping = new PlantStopping(plant, new() { Reaction = Reaction.Stop0, ReactionDelay = reactionDelay });
        var constant = new ConstantDeceleration(1.5);
        foreach (var speed in new[] { 0.1, 0.5, 3 })
        {
            // While the reaction is pending the drive keeps its speed.
            StopTests.Close(constant.Time(speed), stopping.Time(speed));
            StopTests.Close(constant.Distance(speed), stopping.Distance(speed));
        }

        Assert.Equal(0, stopping.Distance(0));
        Assert.Null(stopping.Times(2));
    }

    /// <summary>The head of the lift: falls g t²/2 until its brake closes, upwards it would stop sooner; even from standstill there is a way.</summary>
    [Fact]
    public void ALoadMakesTheWorseDirectionCount()
    {
        var plant = new Plant { Inertia = 100, Load = -981, Brake = new(2000, 0.06) };
        var stopping = new PlantStopping(plant, new() { Reaction = Reaction.Stop0, ReactionDelay = 0.01 });
        var (speed, braked) = (0.2 + 9.81 * 0.06, (2000 - 981) / 100.0);
        StopTests.Close(0.2 * 0.06 + 9.81 * 0.06 * 0.06 / 2 + speed * speed / (2 * braked), stopping.Distance(0.2));
        StopTests.Close(0.06 + speed / braked, stopping.Time(0.2));
        StopTests.Close(speed, stopping.HighestSpeed(0.2));
        Assert.True(stopping.Distance(0) > 0.01);
        StopTests.Close((5000 + 981 - 50) / 100.0, PlantStopping.RunawayAcceleration(plant with { Limit = 5000, Coulomb = 50 }));
        Assert.Contains("plant.limit", Assert.Throws<InputException>(() => PlantStopping.RunawayAcceleration(plant)).Message);
    }

    /// <summary>The lift of the demo: the chain of its laxer level comes to what <c>stop</c> finds from the limit on, and a little more, as it takes viscous friction off until the drive acts.</summary>
    [Fact]
    public void TheRoomOfTheLift()
    {
        var (plan, trace) = Demo("lift-runaway");
        var asked = new Hazard { Unit = "m/s", Stopping = new ConstantDeceleration(1), Overrun = 0.15 };
        var hazard = Assert.Single(PlantHazards.Of(plan, asked));
        Assert.Equal("lift.travel", hazard.For);
        var rooms = Rooms.OfEach(Tune.Run(plan, [trace]), new(), [hazard]).Monitors.Where(limit => limit.Monitor == "travel").ToList();
        Assert.Equal([true, true], rooms.Select(limit => limit.Room.IsThere));
        var fall = LimitStops.OfLimits(plan, "lift", [new RunawayFault()]).Single(stop => stop.From == "travel (level 1)" && stop.Speed.Number < 0).Result.Fall!.Value;
        Assert.InRange(rooms[1].Room.Chain!.Travel, fall, 1.02 * fall);
        Assert.InRange(rooms[1].Room.Energy!.Value, 259, 270);
        Assert.Equal("overrun", rooms[1].Room.DecidedBy);
        Assert.DoesNotContain(rooms[1].Room.Levers, lever => lever.Name == "deceleration");

        // Figures that the user states come before those of the plant.
        var stated = Assert.Single(PlantHazards.Of(plan, asked with { FaultAcceleration = 3, Inertia = 7, For = "lift" }));
        Assert.Equal((3, 7), (stated.FaultAcceleration, stated.Inertia));
        Assert.Empty(PlantHazards.Of(plan, asked with { For = "bridge" }));
        Assert.Empty(PlantHazards.Of(plan, asked with { Unit = "rad/s" }));
    }

    /// <summary>An axis that turns: by hand, 12 N·m less 2 N·m of friction accelerate 0.5 kg·m² with 20 rad/s², and friction alone stops it with 4 rad/s².</summary>
    [Fact]
    public void AnAxisThatTurns()
    {
        var plan = PlanReader.Parse("""
            { "plan": 1, "axes": { "turntable": { "motion": "rotary", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "rad/s" } },
                "plant": { "inertia": "0.5 kg·m²", "coulomb": "2 N·m", "limit": "12 N·m" },
                "monitors": [ { "name": "slow", "function": "SSR", "upper": "1 rad/s", "reaction": "stop 0" } ] } } }
            """);
        var asked = new Hazard { Unit = "rad/s", Stopping = new ConstantDeceleration(1) };
        var hazard = Assert.Single(PlantHazards.Of(plan, asked));
        Assert.Equal(("turntable.slow", 0.5), (hazard.For, hazard.Inertia));
        StopTests.Close(20, hazard.FaultAcceleration);
        StopTests.Close(2 * 2 / (2 * 4.0), hazard.Stopping.Distance(2));
        Assert.Empty(PlantHazards.Of(plan, asked with { Unit = "m/s" }));
    }

    [Theory]
    [InlineData("bridge-simulated", "stopping as its plant does", "--overrun", "50 mm")]
    [InlineData("lift-short-circuit", "plant.limit: a runaway at full torque needs", "--overrun", "5 mm")]
    [InlineData("lift-runaway", "--plant: --deceleration says already", "--overrun", "5 mm", "--deceleration", "1 m/s²")]
    [InlineData("bridge-gate-speed", "--plant: no axis with a plant has a speed limit", "--overrun", "5 mm")]
    public void OnTheCommandLine(string demo, string said, params string[] options)
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        CommandLine.Run(["tune", Path.Combine(Folder(demo), "plan.json"), Path.Combine(Folder(demo), "trace.csv"), "--plant", .. options], new Terminal(output, error, () => Stream.Null));
        Assert.Contains(said, output.ToString() + error, StringComparison.Ordinal);
    }

    private static string Folder(string demo) => Path.Combine(AppContext.BaseDirectory, "traces", demo);

    private static (Plan Plan, Trace Trace) Demo(string name)
    {
        var plan = PlanReader.Read(Path.Combine(Folder(name), "plan.json"));
        return (plan, PlannedTrace.Read(plan, Path.Combine(Folder(name), "trace.csv")));
    }

    [Fact]
    public void WhatDoesNotStopTakesForEver()
    {
        var stopping = new PlantStopping(new() { Inertia = 100, Load = -981 }, new() { Reaction = Reaction.Stop0 });
        Assert.Equal(double.PositiveInfinity, stopping.Distance(0.1));
        Assert.Equal(double.PositiveInfinity, stopping.Time(0.1));
        Assert.Equal(double.PositiveInfinity, new PlantStopping(new() { Inertia = 1, Coulomb = 1 }, new() { Reaction = Reaction.Stop0 }).Time(double.MaxValue));
    }

    /// <summary>A chain with a simulated stop has a largest limit too: with it the overrun is just allowed.</summary>
    [Fact]
    public void AChainFindsItsLargestLimit()
    {
        var plant = new Plant { Inertia = 0.01, Coulomb = 0.2, ShortCircuit = new MagnetBraking(0.5, 2e-3, 0.08, 4) };
        var chain = new StoppingChain { Limit = 1, Cycle = 0.004, ReactionDelay = 0.01, FaultAcceleration = 500, Stopping = new PlantStopping(plant, new() { Reaction = Reaction.Stop0, ReactionDelay = 0.01 }) };
        var limit = chain.LargestLimit(c => c.Travel, 60)!.Value;
        Assert.Equal(60, (chain with { Limit = limit }).Travel, 1e-9);

        // A constant torque as strong as the short circuit at its best would allow far more.
        var constant = chain with { Stopping = new ConstantDeceleration((9.6 + 0.2) / 0.01) };
        Assert.True(constant.LargestLimit(c => c.Travel, 60) > 1.2 * limit);
    }
}
