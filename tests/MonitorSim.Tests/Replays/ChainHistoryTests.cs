using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

public sealed class ChainHistoryTests
{
    public static TheoryData<string> Demos => DemoTests.Cases;

    [Theory]
    [MemberData(nameof(Demos))]
    public void ShowsAtATripWhatTheTripSays(string name)
    {
        var place = Path.Combine(AppContext.BaseDirectory, "traces", name);
        AssertTrips(Path.Combine(place, "plan.json"), Path.Combine(place, "trace.csv"));
    }

    [SkippableFact]
    public void ShowsAtATripWhatTheTripSaysInTheWorkedCases()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var compared = 0;
        foreach (var folder in Directory.EnumerateDirectories(Path.Combine(SharedFolder.Cases!, "full")).Order(StringComparer.Ordinal).Take(60))
            if (!File.Exists(Path.Combine(folder, "refused.txt"))) compared += AssertTrips(Path.Combine(folder, "plan.json"), Path.Combine(folder, "trace.csv"));
        Assert.True(compared > 20, $"only {compared} trips");
    }

    /// <summary>Request at 2 ms, delay 2 ms, limit exceeded from 6 ms on, filter 3 ms: every link in turn.</summary>
    [Fact]
    public void EveryLinkInTurn()
    {
        var plan = Bench.Linear("v", """ "function": "SLS", "limit": "10 mm/s", "request": "on", "delay": "2 ms", "filter": "3 ms" """, """ "signals": { "on": { "windows": [["2 ms", "1 s"]] } }, """);
        var trace = Bench.Milliseconds(("v", [5, 5, 5, 5, 5, 5, 11, 11, 11, 11, 5, 5]));
        var cycles = ChainHistory.Of(plan, trace, [new("x", "m", "upper", 0, 1)]).Single().Cycles;
        Assert.Equal([MonitorState.Idle, MonitorState.Idle, MonitorState.Arming, MonitorState.Arming, .. Enumerable.Repeat(MonitorState.Watching, 5), .. Enumerable.Repeat(MonitorState.Tripped, 3)],
            cycles.Select(cycle => cycle.State));
        Assert.Equal([null, null, 0.002m, 0.002m, 0.002m], cycles.Take(5).Select(cycle => cycle.RequestedAt));
        Assert.Equal([null, 0.004m], cycles.Skip(3).Take(2).Select(cycle => cycle.WatchingAt));
        Assert.Equal([null, 0.005, 0.005, 0.011], cycles.Skip(3).Take(4).Select(cycle => cycle.Value));
        Assert.Equal([null, 0.006m, 0.006m, 0.006m, 0.006m, null], cycles.Skip(5).Take(6).Select(cycle => cycle.ExceededAt));
        Assert.All(cycles.Skip(4), cycle => Assert.Equal(0.01, cycle.Limit));
    }

    /// <summary>Also between the cycles at which something happens: 1, 2, 3 µm a sample from where watching began.</summary>
    [Fact]
    public void EveryCycleIsMeasured()
    {
        var plan = Bench.Plan("""
            "motion": "linear", "channels": { "position": { "column": "p", "unit": "um" } }, "stops": { "STO": {} },
            "monitors": [ { "name": "m", "function": "SOS", "window": "35 um", "reaction": "stop 0" } ]
            """);
        var cycles = ChainHistory.Of(plan, Bench.Milliseconds(("p", [.. Enumerable.Range(0, 40).Select(k => 100.0 + k)])), [new("x", "m", "window", 0, 1)]).Single().Cycles;
        Assert.All(cycles, cycle => Assert.Equal(cycle.Index * 1e-6, cycle.Value!.Value, 1e-15));
        Assert.Equal(36, cycles.Single(cycle => cycle.ExceededAt == cycle.Time).Index);
    }

    [Fact]
    public void AWindowHoldsItsEnds()
    {
        var plan = Bench.Linear("v", """ "function": "SLS", "limit": "10 mm/s" """);
        var cycles = ChainHistory.Of(plan, Bench.Milliseconds(("v", [1, 2, 3, 4, 5])), [new("x", "m", "upper", 0.001m, 0.003m)]).Single().Cycles;
        Assert.Equal([0.001m, 0.002m, 0.003m], cycles.Select(cycle => cycle.Time));
        Assert.Equal([1, 2, 3], cycles.Select(cycle => cycle.Index));
    }

    [Theory]
    [InlineData("n", "upper", "the plan has no monitor x.n")]
    [InlineData("m", "lower", "x.m has no side 'lower'; it has upper")]
    public void WhatThePlanDoesNotHaveIsRefused(string monitor, string side, string message)
    {
        var plan = Bench.Linear("v", """ "function": "SLS", "limit": "10 mm/s" """);
        var wrong = Assert.Throws<ArgumentException>(() => ChainHistory.Of(plan, Bench.Milliseconds(("v", [1, 2])), [new("x", monitor, side, 0, 1)]));
        Assert.Contains(message, wrong.Message);
    }

    /// <summary>Looks at the cycle of each trip, and counts them.</summary>
    private static int AssertTrips(string planFile, string traceFile)
    {
        var plan = PlanReader.Read(planFile);
        var trace = PlannedTrace.Read(plan, traceFile);
        var trips = Replay.Run(plan, trace).Trips.Where(trip => trip.Limit is not null).ToList();
        var histories = ChainHistory.Of(plan, trace, [.. trips.Select(trip => new ChainWindow(trip.Axis, trip.Monitor, trip.Side, trip.Time, trip.Time))]);
        Assert.All(trips.Zip(histories), pair =>
        {
            var (trip, cycle) = (pair.First, Assert.Single(pair.Second.Cycles));
            Assert.Equal((trip.Value, trip.Limit, trip.Level), (cycle.Value, cycle.Limit, cycle.Level));
            Assert.Equal((trip.RequestedAt, trip.WatchingAt, trip.ExceededAt), (cycle.RequestedAt, cycle.WatchingAt, cycle.ExceededAt));
            Assert.Equal(MonitorState.Tripped, cycle.State);
        });
        return trips.Count;
    }
}
