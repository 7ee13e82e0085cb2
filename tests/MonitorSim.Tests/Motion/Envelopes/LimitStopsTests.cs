using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Motion.Envelopes;

/// <summary>Stops from the speeds that a plan allows.</summary>
public sealed class LimitStopsTests
{
    private static readonly Plan Lift = Bench.Plan("""
        "motion": "linear", "channels": { "velocity": { "column": "v", "unit": "mm/s" } },
        "stops": { "STO": {}, "SS1": { "variant": "r", "deceleration": "1 m/s²", "tolerance": "50 mm/s", "delay": "20 ms" } },
        "plant": { "mass": "100 kg", "load": "-981 N", "limit": "2 kN", "brake": { "torque": "2 kN", "apply": "60 ms" } },
        "monitors": [ { "name": "travel", "function": "SLS", "limit": "200 mm/s", "reaction": "stop 1" }, { "name": "told", "function": "SLS", "limit": "300 mm/s", "reaction": "none" } ]
        """, """ "cycle": "4 ms", "reactionDelay": "10 ms", """);

    /// <summary>Both ways, since the load makes them differ; the monitor without a reaction stops nothing. The ramp: 20 ms at 200 mm/s, then 1 m/s² (v²/2a).</summary>
    [Fact]
    public void EveryLimitThatStops()
    {
        var stops = LimitStops.OfLimits(Lift, "x", []);
        Assert.Equal(["200 mm/s", "-200 mm/s"], stops.Select(stop => stop.Speed.ToString()));
        StopTests.Close(0.2 * 0.02 + 0.02, stops[0].Result.Motion.At(stops[0].Result.OffAt!.Value).Position);
        StopTests.Close(0.024, (stops[1].Result.Fall - stops[1].Result.Drop)!.Value);
    }

    /// <summary>The brake closes 60 ms after torque off; without SBC it is not waited for, so that the lift drops g t²/2 and what stopping takes.</summary>
    [Fact]
    public void ALiftDropsAfterItsRamp()
    {
        var drop = LimitStops.OfLimits(Lift, "x", [])[0].Result.Drop!.Value;
        var speed = 9.81 * 0.06;
        StopTests.Close(9.81 * 0.06 * 0.06 / 2 + speed * speed / (2 * (20 - 9.81)), drop);
    }

    [Fact]
    public void FaultsAreFoundByTheLimit()
    {
        var stop = LimitStops.OfLimits(Lift, "x", [new RunawayFault()])[1];
        StopTests.Close(0.004, stop.Result.DetectedAt!.Value);
        Assert.True(stop.Result.PeakSpeed > 0.2 + 0.014 * (20 + 9.81) - 1e-9);
    }

    [Fact]
    public void EveryStopOfASpeed() =>
        Assert.Equal([Reaction.Stop0, Reaction.Stop1], LimitStops.OfSpeed(Lift, "x", "-0.5 m/s", []).Select(stop => stop.Reaction));
}
