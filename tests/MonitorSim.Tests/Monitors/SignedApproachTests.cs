using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>A signed limit bounds motion one way only, and so does the way down to it.</summary>
public class SignedApproachTests
{
    // Asked for at 0 ms, in force from 10 ms; from 30 mm/s with 10 mm/s per ms, tolerance 1 mm/s.
    private static ReplayResult With(bool isSigned, params double[] speeds) => Replay.Run(
        Bench.Linear("v", $$""" "function": "SLS", "delay": "10 ms", "limit": "5 mm/s", "signed": {{(isSigned ? "true" : "false")}}, "approach": { "deceleration": "10 m/s²", "tolerance": "1 mm/s" } """),
        Bench.Milliseconds(("v", speeds)));

    [Fact]
    public void Fast_motion_the_other_way_is_on_no_way_down()
    {
        Assert.Empty(With(isSigned: true, 30, 20, 10, 0, -40, -80).Trips);
        Assert.Equal([("approach", 0.004m)], With(isSigned: false, 30, 20, 10, 0, -40, -80).Trips.Select(trip => (trip.Side, trip.Time)));
    }

    [Fact]
    public void The_ramp_begins_at_the_signed_speed()
    {
        // From -30 mm/s the ramp lies below zero at once: whatever exceeds the limit to come lies above it.
        Assert.Equal([("approach", 0.002m)], With(isSigned: true, -30, 5, 5.1).Trips.Select(trip => (trip.Side, trip.Time)));
        Assert.Empty(With(isSigned: false, -30, 5, 5.1).Trips);
    }
}
