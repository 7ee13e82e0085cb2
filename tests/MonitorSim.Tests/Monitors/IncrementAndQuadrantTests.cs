using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>§3, rows SLI, SLA, SDI and SOS: what a boundary table of one limit does not show.</summary>
public class IncrementAndQuadrantTests
{
    // SLI: "while c_n - c_w < moveTime: |p - p_w| vs increment; from the first cycle with >= on: |p - p_h| vs window". Delay 2 ms: c_w = 2 ms.
    [Theory]
    [InlineData("2 ms", "0 0 0 1 9 9.2", "")]
    [InlineData("2 ms", "0 0 0 1.1 9 9.2", "3 m increment")]
    [InlineData("2 ms", "0 0 0 1 9 9.21", "5 m window")]
    [InlineData("1.999999 ms", "0 0 0 1 9 9.21", "5 m window")]
    [InlineData("2.000001 ms", "0 0 0 1 1.1 9", "4 m increment")]
    [InlineData("2.000001 ms", "0 0 0 1 1 9", "")]
    // No phase for the move at all.
    [InlineData("0 ms", "5 5 0 0.2 0.21 0", "4 m window")]
    public void An_increment_is_measured_in_its_own_time(string moveTime, string positions, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", $""" "function": "SLI", "delay": "2 ms", "increment": "1 mm", "moveTime": "{moveTime}", "window": "0.2 mm", "reaction": "none" """, "p: " + positions)));

    // "moveTime (none: first phase only), window (none: nothing after)".
    [Theory]
    [InlineData("", "0 0.5 1 1 1.1", "4 m increment")]
    [InlineData(""", "moveTime": "2 ms" """, "0 1 50 99 0", "")]
    [InlineData(""", "window": "0 mm" """, "0 1 0 1 1", "")]
    public void Without_a_time_the_move_has_no_end_without_a_window_nothing_follows(string more, string positions, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", """ "function": "SLI", "increment": "1 mm", "reaction": "none" """ + more, "p: " + positions)));

    // SLA with deceleration and signed: a itself on both sides, each in its own quadrant.
    [Theory]
    [InlineData(5, 100, "")]
    [InlineData(5, 100.1, "1 m upper")]
    [InlineData(-5, -999, "")]
    [InlineData(5, -999, "")]
    [InlineData(-5, 200, "")]
    [InlineData(-5, 200.1, "1 m deceleration")]
    public void Signed_acceleration_keeps_its_quadrants(double v, double a, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", """ "function": "SLA", "limit": "100 mm/s²", "deceleration": "200 mm/s²", "signed": true, "reaction": "none" """,
            FormattableString.Invariant($"v: {v} {v} {v}; a: 0 {a} 0"))));

    // A side that is not compared in a cycle breaks its run: two cycles too much either way, but never two in a row of one side.
    [Fact]
    public void A_change_of_quadrant_breaks_the_run() =>
        Assert.Equal(["6 m upper"], Story.Of("", """ "function": "SLA", "limit": "100 mm/s²", "deceleration": "200 mm/s²", "filter": "1 ms", "reaction": "none" """,
            "v: 1 1 -1 1 -1 1 1; a: 300 -1 300 300 300 300 300"));

    // SOS, SDI and SLI count on positions of a modulo axis as unwrapped: through 0 deg is no jump, and a whole turn is not nothing.
    [Theory]
    [InlineData(""" "function": "SOS", "window": "20 deg" """, new[] { 350.0, 10, 350 }, null)]
    [InlineData(""" "function": "SOS", "window": "20 deg" """, new[] { 350.0, 10.1, 350 }, 1)]
    [InlineData(""" "function": "SLI", "increment": "359 deg" """, new[] { 0.0, 120, 240, 359 }, null)]
    [InlineData(""" "function": "SLI", "increment": "359 deg" """, new[] { 0.0, 120, 240, 0 }, 3)]
    [InlineData(""" "function": "SDI", "allow": "positive", "tolerance": "0 deg" """, new[] { 350.0, 10, 100, 200, 300, 10 }, null)]
    [InlineData(""" "function": "SDI", "allow": "positive", "tolerance": "0.2 deg" """, new[] { 10.0, 350 }, 1)]
    [InlineData(""" "function": "SDI", "allow": "positive", "tolerance": "20 deg" """, new[] { 10.0, 350 }, null)]
    public void References_on_a_turning_table_are_unwrapped(string monitor, double[] positions, int? sample)
    {
        var plan = Bench.Plan($$"""
            "motion": "rotary", "modulo": "360 deg", "channels": { "position": { "column": "p", "unit": "deg" } }, "stops": { "STO": {} },
            "monitors": [ { "name": "m", {{monitor}}, "reaction": "none" } ]
            """);
        Assert.Equal(sample is { } k ? [k] : [], Replay.Run(plan, Bench.Milliseconds(("p", positions))).Trips.Select(trip => trip.Sample));
    }

    // "Sides that trip in the same cycle are reported each; later ones not until acknowledged."
    [Theory]
    [InlineData("p: 0 2; v: 0 6", "1 m speed; 1 m window")]
    [InlineData("p: 0 2 2; v: 0 5 6", "1 m window")]
    public void Sides_that_trip_together_are_reported_each(string recording, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", """ "function": "SOS", "window": "1 mm", "speed": "5 mm/s", "reaction": "none" """, recording)));
}
