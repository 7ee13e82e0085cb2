using MonitorSim.Assertions;
using MonitorSim.Plans;
using MonitorSim.Synthesis;

namespace MonitorSim.Tests.Assertions;

/// <summary>Every assertion where it holds and where it does not, and what it then says.</summary>
public class AssertionTests
{
    private static readonly Plan Plan = PlanReader.Parse("""
        { "plan": 1, "signals": { "gateOpen": { "column": "gateOpen" } },
          "axes": { "bridge": { "motion": "linear", "channels": { "velocity": { "column": "velocity", "unit": "m/s" } },
            "stops": { "STO": {}, "SS1": { "variant": "t", "time": "300 ms" } },
            "monitors": [
              { "name": "fast", "function": "SLS", "limit": "1000 mm/s" },
              { "name": "set-up speed", "function": "SLS", "request": "gateOpen", "limit": "33 mm/s", "reaction": "stop 1" } ] } } }
        """);

    private static ReplayResult Run(string speed, bool gateOpen = true) =>
        Replay.Run(Plan, Profile.At("1 kHz").Signal("gateOpen", gateOpen).RampTo(speed, "1 m/s²").Hold("0.5 s").ToTrace("x"));

    private static string Message(Action<ReplayResult> assertion, ReplayResult result) =>
        Assert.Throws<ReplayExpectationException>(() => assertion(result)).Message.ReplaceLineEndings("\n");

    [Fact]
    public void What_holds_passes()
    {
        var trips = Run("40 mm/s");
        var trip = trips.ShouldTrip("bridge", "set-up speed").At("34 ms").Between("34 ms", "34 ms").On("upper").Exactly(1).First;
        Assert.Equal(0.034, trip.Value);
        trips.ShouldNotTrip("bridge", "fast");
        trips.ShouldReach("bridge", AxisState.Running).At("0 s");
        trips.ShouldReach("bridge", AxisState.StoppingToOff).At("0.034 s").Before("34.000001 ms");
        Assert.Equal(0.334m, trips.ShouldReach("bridge", AxisState.TorqueOff).Time);
        trips.ShouldNotReach("bridge", AxisState.Holding);
        Run("33 mm/s").ShouldNotTrip();
        Run("40 mm/s", gateOpen: false).ShouldNotWatch("bridge", "set-up speed");
    }

    [Fact]
    public void A_missing_trip_says_how_much_room_there_was() => Assert.StartsWith("""
        Expected: bridge.set-up speed trips
        But: it never trips
        No trip of it.
        Room: bridge.set-up speed (upper): 1 mm/s (3.03 %) between the critical limit 32 mm/s at 0.032 s and the limit 33 mm/s
        Coverage: bridge.set-up speed requested 1 ×, watched for 0.532 s, tripped 0 ×
        """.ReplaceLineEndings("\n"), Message(result => result.ShouldTrip("bridge", "set-up speed"), Run("32 mm/s")), StringComparison.Ordinal);

    [Fact]
    public void A_trip_at_another_time_says_when_and_how_far_off() => Assert.StartsWith("""
        Expected: bridge.set-up speed trips at 0.512 s
        But: it first trips at 0.034 s, 0.478 s too early
        Trip: bridge.set-up speed (SLS, upper) at 0.034 s: 34 mm/s against 33 mm/s, exceeded since 0.034 s, requested at 0 s
        Room: bridge.set-up speed (upper): -7 mm/s (-21.21 %) between the critical limit 40 mm/s at 0.04 s and the limit 33 mm/s
        Coverage: bridge.set-up speed requested 1 ×, watched for 0.54 s, tripped 1 ×
        """.ReplaceLineEndings("\n"), Message(result => result.ShouldTrip("bridge", "set-up speed").At("0.512 s"), Run("40 mm/s")), StringComparison.Ordinal);

    public static TheoryData<Action<ReplayResult>, string> Failures => new()
    {
        { r => r.ShouldTrip("bridge", "fast"), "Expected: bridge.fast trips\nBut: it never trips\n" },
        { r => r.ShouldTrip("bridge", "setup speed"), "But: axis 'bridge' has no monitor 'setup speed'; did you mean 'set-up speed'?" },
        { r => r.ShouldNotTrip("brige", "fast"), "But: the plan has no axis 'brige'; did you mean 'bridge'?" },
        { r => r.ShouldNotTrip("bridge", "set-up speed"), "But: it trips at 0.034 s\n" },
        { r => r.ShouldNotTrip(), "Expected: nothing trips\nBut: there is 1 trip\nTrip: bridge.set-up speed" },
        { r => r.ShouldNotWatch("bridge", "fast"), "But: it watches from 0 s\n" },
        { r => r.ShouldTrip("bridge", "set-up speed").Between("35 ms", "40 ms"), "trips between 35 ms and 40 ms\nBut: it first trips at 0.034 s, 0.001 s too early\n" },
        { r => r.ShouldTrip("bridge", "set-up speed").Between("0 ms", "33 ms"), "But: it first trips at 0.034 s, 0.001 s too late\n" },
        { r => r.ShouldTrip("bridge", "set-up speed").On("lower"), "trips on lower\nBut: it trips on upper\n" },
        { r => r.ShouldTrip("bridge", "set-up speed").Exactly(2), "trips 2 ×\nBut: it trips 1 ×\n" },
        { r => r.ShouldReach("bridge", AxisState.Holding), "Expected: bridge reaches Holding\nBut: it never does\nState: StoppingToOff from 0.034 s, because of bridge.set-up speed\nState: TorqueOff from 0.334 s" },
        { r => r.ShouldReach("bridge", AxisState.TorqueOff).Before("334 ms"), "reaches TorqueOff before 334 ms\nBut: it does at 0.334 s, not strictly before\n" },
        { r => r.ShouldReach("bridge", AxisState.TorqueOff).At("333 ms"), "But: it does at 0.334 s, 0.001 s too late\n" },
        { r => r.ShouldNotReach("bridge", AxisState.TorqueOff), "Expected: bridge never reaches TorqueOff\nBut: it does at 0.334 s\n" },
        { r => r.ShouldMeetItsPlan(), "But: the plan has none\n" },
    };

    [Theory]
    [MemberData(nameof(Failures))]
    public void What_does_not_hold_says_what_happened(Action<ReplayResult> assertion, string part) =>
        InCulture.Each(() => Assert.Contains(part, Message(assertion, Run("40 mm/s")), StringComparison.Ordinal));

    [Fact]
    public void A_monitor_that_never_watched_proves_nothing() => Assert.Contains("But: it never watched, which proves nothing\n",
        Message(result => result.ShouldNotTrip("bridge", "set-up speed"), Run("40 mm/s", gateOpen: false)), StringComparison.Ordinal);

    [Fact]
    public void The_plans_own_lines_can_be_asked_for()
    {
        var plan = Plan with { Expect = [new ExpectPlan { Axis = "bridge", Monitor = "fast", Trips = true }, new ExpectPlan { Axis = "bridge", Monitor = "set-up speed", Trips = true }] };
        var result = Replay.Run(plan, Profile.At("1 kHz").Signal("gateOpen", true).RampTo("40 mm/s", "1 m/s²").ToTrace("x"));
        Assert.Contains("But: line 0: bridge.fast: no trip\n", Message(r => r.ShouldMeetItsPlan(), result), StringComparison.Ordinal);
        Replay.Run(plan with { Expect = [plan.Expect[1]] }, Profile.At("1 kHz").Signal("gateOpen", true).RampTo("40 mm/s", "1 m/s²").ToTrace("x")).ShouldMeetItsPlan();
    }
}
