using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests;

/// <summary>What the lessons of the slab saw say would have changed the outcome does change it.</summary>
public sealed class DemoLessonTests
{
    [Theory]
    [InlineData("8 ms", true)]
    [InlineData("10 ms", false)]
    public void OneCycleMoreOfFilterLetsTheOvershootPass(string filter, bool trips) =>
        Assert.Equal(trips, Replayed("blade-overspeed", plan => Monitor<Sls>(plan, "blade", sls => sls with { Filter = filter })).IsTripped);

    [Fact]
    public void TheLimitAloneDoesNotSeeThatBrakingBeganLate() =>
        Assert.False(Replayed("bridge-approach", plan => Monitor<Sls>(plan, "bridge", sls => sls with { Approach = null })).IsTripped);

    [Fact]
    public void AShorterDelaySeesTheFastBridge() =>
        Assert.True(Replayed("bridge-blind-window", plan => Monitor<Sls>(plan, "bridge", sls => sls with { Delay = "200 ms" })).IsTripped);

    [Fact]
    public void HoldingTheLastValueTrustsIt() => Assert.False(Replayed("bridge-cable", plan => plan with { Missing = MissingPolicy.Hold }).IsTripped);

    /// <summary>As recorded, the bridge ignores its ramp and passes the end of its travel.</summary>
    [Fact]
    public void WhatIsRecordedIsNotWhatWouldHaveHappened()
    {
        var trips = Replayed("bridge-simulated", plan => plan with { Motion = MotionSource.Recorded }).Trips;
        Assert.Equal(["set-up speed", "SS1", "end of travel"], trips.Select(trip => trip.Monitor));
    }

    [Fact]
    public void ACycleASampleSeesTheEdgeSwitch()
    {
        var change = Replayed("bridge-slow-cycle", plan => plan with { Cycle = null, InputDelay = null }).States[0].Changes[0];
        Assert.Equal((0.506m, AxisState.TorqueOff), (change.Time, change.State));
    }

    [Theory]
    [InlineData("30 ms", true)]
    [InlineData("31 ms", false)]
    public void AFilterLongerThanThePeakLetsItPass(string filter, bool trips) =>
        Assert.Equal(trips, Replayed("lift-breakaway", plan => Monitor<Slt>(plan, "lift", slt => slt with { Filter = filter })).IsTripped);

    [Fact]
    public void WithoutTheGroupTheBladeRunsOn() =>
        Assert.DoesNotContain(Replayed("saw-group", plan => plan with { Groups = new Dictionary<string, IReadOnlyList<string>>() }).States, axis => axis.Axis == "blade" && axis.Changes.Count > 0);

    [Theory]
    [InlineData("0.2 deg", true)]
    [InlineData("0.1 deg", false)]
    public void HysteresisDecidesWhetherTheTurntableCountsAsSquare(string hysteresis, bool trips) =>
        Assert.Equal(trips, Replayed("turntable-cam", plan => Monitor<Sca>(plan, "turntable", sca => sca with { Hysteresis = hysteresis })).IsTripped);

    private static ReplayResult Replayed(string name, Func<Plan, Plan> change)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "traces", name);
        var plan = change(PlanReader.Read(Path.Combine(folder, "plan.json")));
        return Replay.Run(plan, PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv")));
    }

    private static Plan Monitor<T>(Plan plan, string axis, Func<T, MonitorPlan> change) where T : MonitorPlan => plan with
    {
        Axes = plan.Axes.ToDictionary(pair => pair.Key, pair => pair.Key != axis ? pair.Value
            : pair.Value with { Monitors = [.. pair.Value.Monitors.Select(monitor => monitor is T of ? change(of) : monitor)] }),
    };
}
