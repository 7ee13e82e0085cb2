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
    [InlineData(5)]
    [InlineData(2)]
    [InlineData(7)]
    public void AgreesWithEveryPhase(int cycle)
    {
        var trips = Enumerable.Range(0, cycle).Select(phase => (Phase: phase,
            Trip: Replay.Run(PlanOf(cycle) with { Phase = $"{phase} ns" }, Pulse).Trips.Select(trip => (decimal?)trip.Time).FirstOrDefault())).ToList();
        var outcome = PhaseStudy.Of(PlanOf(cycle), Pulse).Single(o => o.Monitor == "speed");
        Assert.Equal(trips.Min(t => t.Trip), outcome.Earliest);
        Assert.Equal(trips.Max(t => t.Trip), outcome.Latest);
        Assert.Equal(trips.Any(t => t.Trip is null), outcome.QuietPhase is not null);
        Assert.Equal(trips.First(t => t.Trip == outcome.Earliest).Phase / 1e9m, outcome.EarliestPhase);
    }

    /// <summary>What the limit would have to be, nanosecond by nanosecond of the phase, against the worst and the best of the few that matter.</summary>
    [Theory]
    [InlineData(5, 0)]
    [InlineData(2, 0)]
    [InlineData(2, 2)]
    [InlineData(7, 7)]
    public void LimitsAgreeWithEveryPhase(int cycle, int filter)
    {
        var trace = new Trace("ramp", [0, 3, 6, 9, 12, 15, 18], [new NumberColumn("v", null, [0, 1, 5, 3, 4, 0, 2])]);
        var plan = PlanOf(cycle, filter);
        var needed = Enumerable.Range(0, cycle).Select(phase => (Phase: phase / 1e9m, Tune.Run(plan with { Phase = $"{phase} ns" }, [trace]).Monitors.Single().Critical)).ToList();
        var limit = PhaseStudy.Of(plan, trace).Single(o => o.Monitor == "speed").Limits.Single();
        Assert.Equal(needed.Max(n => n.Critical), limit.Worst);
        Assert.Equal(needed.Any(n => n.Critical is null) ? null : needed.Min(n => n.Critical), limit.Best);
        Assert.Equal(needed.First(n => n.Critical == limit.Worst).Phase, limit.WorstPhase);
        Assert.Equal(needed.First(n => n.Critical == limit.Best).Phase, limit.BestPhase);
    }

    [Fact]
    public void ASlowCycleMissesThePulseAtSomePhases() => Assert.True(PhaseStudy.Of(PlanOf(5), Pulse).Single(o => o.Monitor == "speed").DependsOnPhase);

    private static Plan PlanOf(int cycle, int filter = 0) => new()
    {
        Cycle = $"{cycle} ns",
        Axes = new Dictionary<string, AxisPlan>
        {
            ["bridge"] = new()
            {
                Channels = new() { Velocity = new() { Column = "v", Unit = "m/s" } },
                Stops = new() { Sto = new() },
                Monitors = [new Sls { Name = "speed", Limit = "1 m/s", Filter = $"{filter} ns", Reaction = Reaction.Stop0 }],
            },
        },
    };
}
