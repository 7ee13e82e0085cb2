using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class PhaseStudyTests
{
    private static readonly Trace Pulse = new("pulse", [0, 3, 6, 9, 12, 15, 18],
        [new NumberColumn("v", null, [0, 0, 2, 0, 0, 0, 0])]);

    /// <summary>All phases tried one by one, nanosecond by nanosecond, agree with the few that matter.</summary>
    [Theory]
    [InlineData(5, 0)]
    [InlineData(2, 0)]
    [InlineData(7, 0)]
    [InlineData(6, 0)]
    [InlineData(9, 0)]
    [InlineData(6, 2)]
    [InlineData(9, 4)]
    public void AgreesWithEveryPhase(int cycle, int inputDelay)
    {
        var plan = PlanOf(cycle) with { InputDelay = $"{inputDelay} ns" };
        var trips = Enumerable.Range(0, cycle).Select(phase => (Phase: phase,
            Trip: Replay.Run(plan with { Phase = $"{phase} ns" }, Pulse).Trips.Select(trip => (decimal?)trip.Time).FirstOrDefault())).ToList();
        var outcome = PhaseStudy.Of(plan, Pulse).Single(o => o.Monitor == "speed");
        Assert.Equal(trips.Min(t => t.Trip), outcome.Earliest);
        Assert.Equal(trips.Max(t => t.Trip), outcome.Latest);
        Assert.Equal(trips.Where(t => t.Trip is null).Select(t => (decimal?)(t.Phase / 1e9m)).FirstOrDefault(), outcome.QuietPhase);
        Assert.Equal(trips.First(t => t.Trip == outcome.Earliest).Phase / 1e9m, outcome.EarliestPhase);
        Assert.Equal(trips.First(t => t.Trip == outcome.Latest).Phase / 1e9m, outcome.LatestPhase);
        Assert.Equal(trips.Any(t => t.Trip is null) && trips.Any(t => t.Trip is not null), outcome.DependsOnPhase);
    }

    /// <summary>What the limit would have to be, nanosecond by nanosecond of the phase, against the worst and the best of the few that matter.</summary>
    [Theory]
    [InlineData(5, 0, "upper")]
    [InlineData(2, 0, "upper")]
    [InlineData(2, 2, "upper")]
    [InlineData(7, 7, "upper")]
    [InlineData(9, 9, "upper")]
    [InlineData(5, 0, "lower")]
    [InlineData(7, 7, "lower")]
    [InlineData(9, 0, "lower")]
    public void LimitsAgreeWithEveryPhase(int cycle, int filter, string side)
    {
        var trace = new Trace("ramp", [0, 3, 6, 9, 12, 15, 18], [new NumberColumn("v", null, [0, 1, 5, 3, 4, 0, 2])]);
        var plan = PlanOf(cycle, filter, side == "lower" ? new Ssr { Name = "speed", Lower = "1 m/s", Filter = $"{filter} ns", Reaction = Reaction.Stop0 } : null);
        var sign = side == "lower" ? -1 : 1;
        var needed = Enumerable.Range(0, cycle).Select(phase => (Phase: phase / 1e9m, Tune.Run(plan with { Phase = $"{phase} ns" }, [trace]).Monitors.Single().Critical)).ToList();
        var limit = PhaseStudy.Of(plan, trace).Single(o => o.Monitor == "speed").Limits.Single();
        Assert.Equal(side, limit.Side);
        Assert.Equal(sign * needed.Max(n => sign * n.Critical), limit.Worst);
        Assert.Equal(needed.Any(n => n.Critical is null) ? null : sign * needed.Min(n => sign * n.Critical), limit.Best);
        Assert.Equal(needed.First(n => n.Critical == limit.Worst).Phase, limit.WorstPhase);
        Assert.Equal(needed.First(n => n.Critical == limit.Best).Phase, limit.BestPhase);
    }

    [Fact]
    public void ASlowCycleMissesThePulseAtSomePhases() => Assert.True(PhaseStudy.Of(PlanOf(5), Pulse).Single(o => o.Monitor == "speed").DependsOnPhase);

    [Fact]
    public void WhatAlwaysOrNeverTripsDoesNotDependOnThePhase()
    {
        var fast = new Trace("fast", [0, 3, 6, 9, 12, 15, 18], [new NumberColumn("v", null, [2, 2, 2, 2, 2, 2, 2])]);
        var always = PhaseStudy.Of(PlanOf(5), fast).Single(o => o.Monitor == "speed");
        Assert.Equal((false, true, true), (always.DependsOnPhase, always.Earliest is not null, always.QuietPhase is null));
        var slow = new Trace("slow", [0, 3, 6, 9, 12, 15, 18], [new NumberColumn("v", null, [1, 1, 1, 1, 1, 1, 1])]);
        var never = PhaseStudy.Of(PlanOf(5), slow).Single(o => o.Monitor == "speed");
        Assert.Equal((false, true, 0m), (never.DependsOnPhase, never.Earliest is null, never.QuietPhase));
    }

    [Fact]
    public void APlanWithoutACycleHasNoPhases() =>
        Assert.Equal("cycle: monitors run once a sample, so there is no phase; give a cycle, such as \"4 ms\"",
            Assert.Single(Assert.Throws<InputException>(() => PhaseStudy.Of(PlanOf(5) with { Cycle = null }, Pulse)).Problems).ToString());

    private static Plan PlanOf(int cycle, int filter = 0, MonitorPlan? monitor = null) => new()
    {
        Cycle = $"{cycle} ns",
        Axes = new Dictionary<string, AxisPlan>
        {
            ["bridge"] = new()
            {
                Channels = new() { Velocity = new() { Column = "v", Unit = "m/s" } },
                Stops = new() { Sto = new() },
                Monitors = [monitor ?? new Sls { Name = "speed", Limit = "1 m/s", Filter = $"{filter} ns", Reaction = Reaction.Stop0 }],
            },
        },
    };
}
