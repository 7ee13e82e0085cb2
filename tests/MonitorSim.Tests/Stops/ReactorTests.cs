using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Stops;

/// <summary>Demands, causes, acknowledgements and groups.</summary>
public class ReactorTests
{
    private const string Stops = """ "SS1": { "request": "s1", "variant": "t", "time": "4 ms" }, "SS2": { "request": "s2", "variant": "t", "time": "4 ms" }, "SOS": { "request": "hold", "window": "1 mm" } """;

    /// <summary>Replays 40 ms at rest, but for 101 mm/s at one cycle; signals are windows in ms.</summary>
    private static ReplayResult Replayed(int fastAt, string on = "release", params (string Signal, int From, int Until)[] signals)
    {
        var windows = new[] { "s1", "s2", "hold", "reset" }.Select(name =>
            $$""" "{{name}}": { "windows": [{{string.Join(", ", signals.Where(s => s.Signal == name).Append((name, 900, 901)).Select(s => $"[\"{s.Item2} ms\", \"{s.Item3} ms\"]"))}}] } """);
        return StopBench.Replayed(Stops, [("p", new double[40]), ("v", [.. Enumerable.Range(0, 40).Select(k => k == fastAt ? 101.0 : 0)])], "stop 1",
            $$""" "signals": { {{string.Join(", ", windows)}} }, "acknowledge": { "signal": "reset", "on": "{{on}}" }, """);
    }

    [Fact]
    public void A_more_severe_demand_takes_over_at_once_a_lesser_one_changes_nothing()
    {
        Assert.Equal([(2, AxisState.StoppingToHold), (4, AxisState.StoppingToOff), (8, AxisState.TorqueOff)], Replayed(99, "release", ("s2", 2, 30), ("s1", 4, 30)).Changes());
        Assert.Equal([(2, AxisState.StoppingToOff), (6, AxisState.TorqueOff)], Replayed(99, "release", ("s1", 2, 30), ("s2", 4, 30), ("hold", 1, 2)).Changes()[^2..]);
        Assert.Equal([(2, AxisState.Holding)], Replayed(99, "release", ("hold", 2, 50), ("s2", 5, 20)).Changes());
    }

    [Fact]
    public void A_request_that_goes_releases_holding_but_not_torque_off()
    {
        Assert.Equal([(2, AxisState.Holding), (9, AxisState.Running)], Replayed(99, "release", ("hold", 2, 9)).Changes());
        Assert.Equal([(2, AxisState.StoppingToHold), (4, AxisState.Running)], Replayed(99, "release", ("s2", 2, 4)).Changes());
        Assert.Equal([(2, AxisState.StoppingToOff), (6, AxisState.TorqueOff)], Replayed(99, "release", ("s1", 2, 4)).Changes());
        Assert.Equal([(2, AxisState.StoppingToOff), (6, AxisState.TorqueOff), (12, AxisState.Running)], Replayed(99, "release", ("s1", 2, 4), ("reset", 10, 12)).Changes());
    }

    // Tripped at 2 ms, stopping until 6 ms.
    [Theory]
    [InlineData("release", 3, 5, null)]
    [InlineData("release", 5, 6, null)]
    [InlineData("release", 5, 7, 7)]
    [InlineData("release", 8, 11, 11)]
    [InlineData("press", 8, 11, 8)]
    [InlineData("press", 5, 11, null)]
    [InlineData("release", 38, 99, null)]
    public void An_acknowledgement_acts_on_an_edge_and_only_when_nothing_is_stopping(string on, int from, int until, int? acts)
    {
        var result = Replayed(2, on, ("reset", from, until));
        (decimal, AxisState)[] stopped = [(2, AxisState.StoppingToOff), (6, AxisState.TorqueOff)];
        Assert.Equal(acts is { } at ? [.. stopped, (at, AxisState.Running)] : stopped, result.Changes());
    }

    [Fact]
    public void A_trip_is_not_acknowledged_while_a_stop_is_requested()
    {
        Assert.Equal([(2, AxisState.StoppingToOff), (6, AxisState.TorqueOff)], Replayed(2, "release", ("s2", 9, 20), ("reset", 10, 12)).Changes());

        // Acknowledged once the request has gone; in the same cycle will do.
        Assert.Equal((20, AxisState.Running), Replayed(2, "release", ("s2", 9, 20), ("reset", 10, 20)).Changes()[^1]);

        // A request to hold is no stop request: the axis then holds, without a new ramp.
        Assert.Equal((12, AxisState.Holding), Replayed(2, "release", ("hold", 9, 30), ("reset", 10, 12)).Changes()[2]);
    }

    [Fact]
    public void Demands_spread_to_the_group_at_the_same_cycle_and_groups_with_a_common_member_are_one()
    {
        static string Axis(string name, string reaction) => $$"""
            "{{name}}": { "motion": "linear", "channels": { "velocity": { "column": "{{name}}", "unit": "mm/s" } },
              "stops": { "STO": {}, "SS1": { "variant": "t", "time": "{{(name == "b" ? 3 : 5)}} ms" } },
              "monitors": [ { "name": "fast", "function": "SLS", "limit": "100 mm/s", "reaction": "{{reaction}}" } ] }
            """;
        var plan = PlanOf($$""" "groups": { "one": ["a", "b"], "two": ["b", "c"] }, "axes": { {{Axis("a", "stop 1")}}, {{Axis("b", "none")}}, {{Axis("c", "none")}}, {{Axis("d", "stop 1")}} } """);
        var result = Replay.Run(plan, Bench.Milliseconds(("a", [0, 0, 101, 0, 0, 0, 0, 0, 0]), ("b", new double[9]), ("c", [0, 101, 0, 0, 0, 0, 0, 0, 0]), ("d", new double[9])));
        Assert.Equal([(2, AxisState.StoppingToOff), (7, AxisState.TorqueOff)], result.Changes("a"));
        Assert.Equal([(2, AxisState.StoppingToOff), (5, AxisState.TorqueOff)], result.Changes("b"));
        Assert.Equal([(2, AxisState.StoppingToOff), (7, AxisState.TorqueOff)], result.Changes("c"));
        Assert.Empty(result.Changes("d"));
        Assert.All(result.States.Where(s => s.Changes.Count > 0), s => Assert.Equal("a.fast", s.Changes[0].Cause));
    }

    private static Plan PlanOf(string members) => MonitorSim.Plans.PlanReader.Parse($$"""{ "plan": 1, {{members}} }""");
}
