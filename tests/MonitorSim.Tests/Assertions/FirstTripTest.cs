using MonitorSim.Assertions;
using MonitorSim.Plans;
using MonitorSim.Synthesis;

namespace MonitorSim.Tests.Assertions;

/// <summary>The whole of a test of trip logic: a plan, a motion, a replay, and what is expected of it.</summary>
public class FirstTripTest
{
    private static readonly Plan SetUpMode = PlanReader.Parse("""
        { "plan": 1, "title": "Slab saw: set-up mode",
          "signals": { "gateOpen": { "column": "gateOpen" } },
          "axes": { "bridge": { "motion": "linear", "standstill": "2 mm/s",
            "channels": { "position": { "column": "position", "unit": "m" }, "velocity": { "column": "velocity", "unit": "m/s" } },
            "stops": { "STO": {}, "SS1": { "variant": "t", "time": "300 ms" } },
            "monitors": [ { "name": "set-up speed", "function": "SLS", "request": "gateOpen",
                            "delay": "200 ms", "limit": "33 mm/s", "filter": "8 ms", "reaction": "stop 1" } ] } } }
        """);

    [Fact]
    public void Speeding_up_behind_an_open_gate_stops_the_bridge()
    {
        var trace = Profile.At("1 kHz")
            .Hold("0.1 s").Signal("gateOpen", true)       // watched from 0.3 s on
            .Hold("0.4 s").RampTo("40 mm/s", "1 m/s²")    // 33 mm/s are reached at 0.533 s and passed one sample later
            .Hold("0.6 s").ToTrace("speeding up");

        var result = Replay.Run(SetUpMode, trace);

        result.ShouldTrip("bridge", "set-up speed").At("0.542 s").On("upper").Exactly(1);
        result.ShouldReach("bridge", AxisState.TorqueOff).Before("1 s");
    }

    [Fact]
    public void Exactly_at_the_limit_is_allowed()
    {
        var trace = Profile.At("1 kHz").Signal("gateOpen", true).RampTo("33 mm/s", "1 m/s²").Hold("1 s").ToTrace("at the limit");

        Replay.Run(SetUpMode, trace).ShouldNotTrip("bridge", "set-up speed");
    }
}
