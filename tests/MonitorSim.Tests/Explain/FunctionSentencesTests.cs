using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Explain;

/// <summary>What was seen, for every function that can trip, in the unit of its limit.</summary>
public class FunctionSentencesTests
{
    private static readonly StopsPlan Off = new() { Sto = new() };

    public static TheoryData<string, MonitorPlan, double[][], string> Monitors => new()
    {
        { "v", new Ssr { Name = "m", Reaction = Reaction.None, Lower = "0.6 m/min" }, [[20, 20, 5]], "The speed was 0.3 m/min, below the limit of 0.6 m/min since 0.002 s." },
        { "v", new Sls { Name = "m", Reaction = Reaction.None, Limit = "10 mm/s", Signed = true }, [[0, -20, 11]], "The speed with its sign was 11 mm/s, above the limit of 10 mm/s since 0.002 s." },
        { "p", new Sdi { Name = "m", Reaction = Reaction.None, Allow = Direction.Positive, Tolerance = "0.2 mm" }, [[0.3, 0.2, 0]],
            "The motion against the permitted direction (positive) from the furthest position reached was 0.3 mm, above the tolerance of 0.2 mm since 0.002 s." },
        { "p", new Sdi { Name = "m", Reaction = Reaction.None, Allow = Direction.Negative, Tolerance = "200 um", Reference = DirectionReference.Start }, [[0, 0.2, 0.3]],
            "The motion against the permitted direction (negative) from where watching began was 300 um, above the tolerance of 200 um since 0.002 s." },
        { "va", new Sla { Name = "m", Reaction = Reaction.None, Limit = "1 m/s²" }, [[20, 20, 20], [0, 0, -1500]], "The acceleration was 1.5 m/s², above the limit of 1 m/s² since 0.002 s." },
        { "va", new Sla { Name = "m", Reaction = Reaction.None, Limit = "1 m/s²", Deceleration = "2 m/s²" }, [[20, 20, 20], [0, 0, -2500]],
            "The deceleration while slowing down was 2.5 m/s², above the limit of 2 m/s² since 0.002 s." },
        { "va", new Sar { Name = "m", Reaction = Reaction.None, Lower = "1 m/s²" }, [[0, 0, 0], [2000, 1000, 500]], "The acceleration was 0.5 m/s², below the limit of 1 m/s² since 0.002 s." },
        { "q", new Slt { Name = "m", Reaction = Reaction.None, Limit = "1 kN" }, [[0, 0, -1200]], "The force was 1.2 kN, above the limit of 1 kN since 0.002 s." },
        { "q", new Str { Name = "m", Reaction = Reaction.None, Lower = "-10 N" }, [[0, 0, -11]], "The force with its sign was -11 N, below the limit of -10 N since 0.002 s." },
        { "p", new Slp { Name = "m", Reaction = Reaction.None, Upper = "1 cm" }, [[0, 10, 12]], "The position was 1.2 cm, above the limit of 1 cm since 0.002 s." },
        { "p", new Sli { Name = "m", Reaction = Reaction.None, Increment = "1 mm" }, [[0, 1, 1.5]], "The length of the move since watching began was 1.5 mm, above the increment of 1 mm since 0.002 s." },
        { "p", new Sli { Name = "m", Reaction = Reaction.None, Increment = "1 mm", MoveTime = "1 ms", Window = "0.1 mm" }, [[0, 1, 1.5]],
            "The distance from where the move should have ended was 0.5 mm, above the window of 0.1 mm since 0.002 s." },
        { "p", new Sos { Name = "m", Reaction = Reaction.None, Window = "0.1 mm" }, [[0, 0, 0.5]], "The distance from where it should stand was 0.5 mm, above the window of 0.1 mm since 0.002 s." },
        { "pv", new Sos { Name = "m", Reaction = Reaction.None, Window = "1 mm", Speed = "1 mm/s" }, [[0, 0, 0], [0, 0, 2]], "The speed while it should stand was 2 mm/s, above the limit of 1 mm/s since 0.002 s." },
        { "T", new Smt { Name = "m", Reaction = Reaction.Stop0, Limit = "80 °C" }, [[70, 80, 81]], "The temperature was 81 °C, above the limit of 80 °C since 0.002 s." },
    };

    [Theory]
    [MemberData(nameof(Monitors), DisableDiscoveryEnumeration = true)]
    public void A_monitor_says_what_it_saw(string columns, MonitorPlan monitor, double[][] values, string seen) =>
        Assert.Contains("  " + seen, ExplainBench.Lines(ExplainBench.Plan(columns, Off, monitor), [.. columns.Select((c, i) => (c.ToString(), values[i]))]));

    [Fact]
    public void Two_recordings_say_by_how_much_they_differ()
    {
        var plan = ExplainBench.Plan("v", Off);
        var axis = plan.Axes["x"] with { Channels = new() { Velocity = new() { Column = "v", Unit = "mm/s", Second = new() { Column = "w", Tolerance = "1 mm/s", Time = "1 ms" } } } };
        var lines = ExplainBench.Lines(plan with { Axes = new Dictionary<string, AxisPlan> { ["x"] = axis } }, ("v", [0, 0, 0]), ("w", [0, 2, 3]));
        Assert.Contains("At 0.002 s x, velocity two channels trips, side upper, and demands stop 0 (STO).", lines);
        Assert.Contains("  The two recordings are always compared, here from 0 s on.", lines);
        Assert.Contains("  The difference of the two recordings was 3 mm/s, above the tolerance of 1 mm/s since 0.001 s, for 1 ms without a break.", lines);
        Assert.Contains("  Strictly more than the tolerance for at least the time of 1 ms is a trip; exactly the tolerance is allowed.", lines);
        Assert.Contains("  Avoided by a tolerance of 2 mm/s, or a time above 1 ms, all else unchanged.", lines);
    }

    // SS1 begins at 1 ms with 101 mm/s; 10 m/s² takes 10 mm/s off a millisecond.
    [Fact]
    public void A_ramp_says_how_far_above_it_the_speed_lay()
    {
        var lines = Stopped(new() { Variant = StopVariant.Ramp, Deceleration = "10 m/s²", Tolerance = "15 mm/s" }, ("v", [0, 101, 101, 101, 101]));
        Assert.Contains("  The stop began at 0.001 s, and its check has watched since then.", lines);
        Assert.Contains("  The speed above the ramp of the stop (10 m/s²) was 20 mm/s, above the tolerance of 15 mm/s since 0.003 s.", lines);
        Assert.Contains("  There is no filter: the first cycle with strictly more than the tolerance is a trip; exactly the tolerance is allowed.", lines);
        Assert.Contains("  At 0.003 s x has its torque off (STO, stop category 0), because of this trip.", lines);
        Assert.Contains(lines, line => line.EndsWith("This is not exact: it holds given that the stop began as it did.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stop_by_deceleration_says_what_was_reached_against_what_was_demanded()
    {
        var lines = Stopped(new() { Variant = StopVariant.Deceleration, Deceleration = "2 m/s²", Filter = "1 ms" }, ("v", [0, 101, 100, 99, 98]), ("a", [0, -1000, -1000, -500, 0]));
        Assert.Contains("  The deceleration reached was 1 m/s², below the demanded deceleration of 2 m/s² since 0.001 s, for 1 ms without a break.", lines);
    }

    [Fact]
    public void A_stop_that_takes_too_long_says_the_time()
    {
        var lines = Stopped(new() { Variant = StopVariant.Ramp, Deceleration = "1 mm/s²", Tolerance = "1 m/s", TimeLimit = "2 ms" }, ("v", [0, 101, 90, 90, 90, 90]));
        Assert.Contains("  The time that the stop took was 3 ms, above the time limit of 2 ms since 0.004 s.", lines);
    }

    [Fact]
    public void Torque_left_and_a_slipping_brake_are_told()
    {
        var stops = new StopsPlan { Sto = new() { Residual = "5 N", Grace = "1 ms" }, Sbc = new() { Apply = "1 ms", Window = "0.2 mm" } };
        var lines = ExplainBench.Lines(ExplainBench.Plan("pvq", stops, new Sls { Name = "fast", Limit = "100 mm/s", Reaction = Reaction.Stop0 }),
            ("p", [0, 0, 0, 0.3]), ("v", [0, 101, 0, 0]), ("q", [9, 9, 9, 9]));
        Assert.Contains("  The torque went off at 0.001 s, and its check has watched since 0.002 s.", lines);
        Assert.Contains("  The force that was left after torque off was 9 N, above the residual of 5 N since 0.002 s.", lines);
        Assert.Contains("  The brake was commanded at 0.001 s, and its check has watched since 0.002 s.", lines);
        Assert.Contains("  The slip of the applied brake was 0.3 mm, above the window of 0.2 mm since 0.003 s.", lines);
        Assert.Contains("  The trip changes nothing at x, which has its torque off (STO, stop category 0).", lines);
    }

    private static IReadOnlyList<string> Stopped(RampStopPlan ss1, params (string Column, double[] Values)[] columns) => ExplainBench.Lines(
        ExplainBench.Plan(string.Concat(columns.Select(c => c.Column)), Off with { Ss1 = ss1 }, new Sls { Name = "fast", Limit = "100 mm/s", Reaction = Reaction.Stop1 }), columns);
}
