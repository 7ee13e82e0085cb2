using MonitorSim.Plans;
using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Stops;

/// <summary>§4, groups: axes a and b are one group, c is alone; each sentence at the cycle at which it takes hold.</summary>
public class GroupTests
{
    private static ReplayResult Replayed(params (string Column, double[] Values)[] columns)
    {
        static string Axis(string name) => $$"""
            "{{name}}": { "motion": "linear", "standstill": "1 mm/s",
              "channels": { "position": { "column": "p", "unit": "mm" }, "velocity": { "column": "{{name}}", "unit": "mm/s" }, "torque": { "column": "q", "unit": "N" } },
              "stops": { "STO": { "request": "{{name}}.state == Running and {{name}}0", "residual": "3 N", "grace": "90 ms" },
                "SS1": { "variant": "r", "deceleration": "{{(name == "b" ? 20 : 50)}} m/s²", "tolerance": "5 mm/s" }, "SS2": { "request": "{{name}}2", "variant": "t", "time": "2 ms" },
                "SOS": { "request": "{{name}}h", "window": "1 mm" } },
              "monitors": [ { "name": "fast", "function": "SLS", "limit": "100 mm/s", "reaction": "stop 1" }, { "name": "told", "function": "SLS", "limit": "100 mm/s", "reaction": "none" } ] }
            """;
        var length = columns[0].Values.Length;
        string[] names = ["p", "q", "a", "b", "c", .. new[] { "a", "b", "c" }.SelectMany(axis => new[] { axis + "0", axis + "2", axis + "h" }), "reset"];
        var signals = names.Where(name => name.Length > 1).Select(name => $$""" "{{name}}": { "column": "{{name}}" } """);
        var plan = PlanReader.Parse($$"""
            { "plan": 1, "groups": { "g": ["a", "b"] }, "acknowledge": { "signal": "reset" }, "signals": { {{string.Join(", ", signals)}} }, "axes": { {{Axis("a")}}, {{Axis("b")}}, {{Axis("c")}} } }
            """);
        return Replay.Run(plan, Bench.Milliseconds([.. columns, .. names.Except(columns.Select(column => column.Column)).Select(name => (name, new double[length]))]));
    }

    private static string States(ReplayResult result, string axis) => string.Join("; ", result.Changes(axis).Select(change => FormattableString.Invariant($"{change.Time:0.###} {change.State}")));

    // "Every demand spreads to the whole group at the same cycle, each axis with its own parameters."
    [Fact]
    public void A_trip_spreads_each_axis_stops_by_its_own_ramp()
    {
        var result = Replayed(("a", [0, 101, 51, 1, 0, 0, 0, 0]), ("b", [80, 80, 60, 40, 20, 0, 0, 0]), ("c", [80, 80, 80, 80, 80, 80, 80, 80]));
        Assert.Equal("1 StoppingToOff; 3 TorqueOff", States(result, "a"));
        Assert.Equal("1 StoppingToOff; 5 TorqueOff", States(result, "b"));
        Assert.Equal("", States(result, "c"));
        Assert.Equal("a.fast", result.States.Single(states => states.Axis == "b").Changes[0].Cause);
    }

    // "violations included": b leaves its ramp (20 mm/s a ms, 5 above) at 2 ms, and a, which keeps to its own, is without torque in that cycle too.
    [Theory]
    [InlineData(65, "1 StoppingToOff; 3 TorqueOff", "1 StoppingToOff; 5 TorqueOff")]
    [InlineData(65.1, "1 StoppingToOff; 2 TorqueOff", "1 StoppingToOff; 2 TorqueOff")]
    public void A_violation_spreads(double speed, string a, string b)
    {
        var result = Replayed(("a", [0, 101, 51, 1, 0, 0, 0, 0]), ("b", [80, 80, speed, 40, 20, 0, 0, 0]));
        Assert.Equal((a, b), (States(result, "a"), States(result, "b")));
    }

    // Requests spread as well, and go together; SOS holds the group, and whoever moves away takes torque from all.
    [Theory]
    [InlineData("ah", "1 Holding; 5 Running")]
    [InlineData("a2", "1 StoppingToHold; 3 Holding; 5 Running")]
    public void A_request_spreads_and_goes_for_all(string signal, string states)
    {
        var result = Replayed((signal, [0, 1, 1, 1, 1, 0, 0, 0]));
        Assert.Equal((states, states, ""), (States(result, "a"), States(result, "b"), States(result, "c")));
    }

    [Fact]
    public void A_trip_without_reaction_spreads_nothing()
    {
        var result = Replayed(("c", [0, 0, 0, 0, 0, 0]), ("q", [9, 9, 9, 9, 9, 9]), ("b", [0, 100, 100, 0, 0, 0]));
        Assert.All(result.States, states => Assert.Empty(states.Changes));
    }

    // "Only where no axis of the group is still stopping": a stands from 3 ms, b from 5 ms on.
    [Theory]
    [InlineData(4, "1 StoppingToOff; 3 TorqueOff", "1 StoppingToOff; 5 TorqueOff")]
    [InlineData(5, "1 StoppingToOff; 3 TorqueOff", "1 StoppingToOff; 5 TorqueOff")]
    [InlineData(6, "1 StoppingToOff; 3 TorqueOff; 6 Running", "1 StoppingToOff; 5 TorqueOff; 6 Running")]
    public void An_acknowledgement_waits_for_the_last_axis_of_the_group(int released, string a, string b)
    {
        double[] reset = new double[8];
        reset[released - 1] = 1;
        var result = Replayed(("a", [0, 101, 51, 1, 0, 0, 0, 0]), ("b", [80, 80, 60, 40, 20, 0, 0, 0]), ("reset", reset));
        Assert.Equal((a, b), (States(result, "a"), States(result, "b")));
    }

    // "While no stop request is present on the axis or in its group": SS2 of b is asked for from 4 ms until 6 ms; that of c, which is not of the group, does not matter.
    [Theory]
    [InlineData("b2", 6, "1 StoppingToOff; 3 TorqueOff")]
    [InlineData("b2", 7, "1 StoppingToOff; 3 TorqueOff; 7 Running")]
    [InlineData("c2", 6, "1 StoppingToOff; 3 TorqueOff; 6 Running")]
    public void A_stop_requested_in_the_group_keeps_trips_latched(string signal, int released, string states)
    {
        double[] reset = new double[10], request = new double[10];
        reset[released - 1] = 1;
        (request[4], request[5], request[6]) = (1, 1, 1);
        var result = Replayed(("a", [0, 101, 51, 1, 0, 0, 0, 0, 0, 0]), ("b", [0, 0, 0, 0, 0, 0, 0, 0, 0, 0]), (signal, request), ("reset", reset));
        Assert.Equal(states, States(result, "a"));
    }

    // "An expression that reads an output or a state sees its value of the cycle before": STO of c asks for c to be running, and is asked for no longer a cycle later.
    [Fact]
    public void A_state_is_seen_a_cycle_later()
    {
        var result = Replayed(("c0", [0, 1, 1, 1, 1, 1]), ("reset", [0, 0, 1, 0, 0, 0]));

        // Torque off at 1 ms; the request goes at 2 ms; acknowledged at 3 ms; running, it is asked for again at 4 ms.
        Assert.Equal("1 TorqueOff; 3 Running; 4 TorqueOff", States(result, "c"));
    }
}
