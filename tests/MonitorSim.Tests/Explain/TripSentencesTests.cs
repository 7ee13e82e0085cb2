using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Explain;

/// <summary>Whole stories of single trips.</summary>
public class TripSentencesTests
{
    private static readonly StopsPlan Off = new() { Sto = new() };
    private static readonly StopsPlan ByTime = new() { Sto = new(), Ss1 = new() { Variant = StopVariant.Time, Time = "3 ms" } };

    [Fact]
    public void A_speed_trip_is_told_from_the_request_to_the_release() => InCulture.Each(() =>
    {
        var plan = ExplainBench.Plan("v", ByTime, new Sls { Name = "set-up", Request = "gate", Delay = "1 ms", Filter = "2 ms", Limit = "33 mm/s", Reaction = Reaction.Stop1 });
        var lines = ExplainBench.Lines(plan with { Acknowledge = new() { Signal = "reset", On = AcknowledgeEdge.Release }, Signals = Signals("9 ms", "10 ms") },
            ("v", [0, 50, 50, 34.5, 35, 34.5, 0, 0, 0, 0, 0, 0]));
        Assert.Equal([
            "Test bench, on array (0.011 s): 1 trip.",
            "",
            "At 0.005 s x, set-up (SLS) trips, side upper, and demands stop 1 (SS1).",
            "  Its request, gate, came at 0.002 s; after its delay of 1 ms it has watched since 0.003 s.",
            "  The speed was 34.5 mm/s, above the limit of 33 mm/s since 0.003 s, for 2 ms without a break, reaching 35 mm/s.",
            "  Strictly more than the limit for at least the filter of 2 ms is a trip; exactly the limit is allowed.",
            "  Avoided by a limit of 34.5 mm/s, or a filter above 2 ms, or a delay above 1 ms, all else unchanged.",
            "  At 0.005 s x stops and will switch its torque off (SS1, stop category 1), because of this trip. At 0.008 s x has its torque off (STO, stop category 0), "
                + "the time of the stop being up, standing or not. At 0.01 s x runs again, released by an acknowledgement.",
            "  An acknowledgement comes at 0.01 s.",
            ""], lines.Take(10));
    });

    [Fact]
    public void An_acknowledgement_that_comes_too_early_is_said()
    {
        var plan = ExplainBench.Plan("v", ByTime, new Sls { Name = "set-up", Limit = "33 mm/s", Reaction = Reaction.Stop1 });
        var lines = ExplainBench.Lines(plan with { Acknowledge = new() { Signal = "reset" }, Signals = Signals("3 ms", "4 ms") }, ("v", [0, 0, 50, 0, 0, 0, 0]));
        Assert.Contains("  An acknowledgement at 0.004 s is ignored because the axis, or one of its group, is still stopping. No other follows that counts, so the trip stays latched.", lines);
    }

    // Asked for 2 m/min when v = 90 mm/s; 1 m/s² takes 1 mm/s off a millisecond.
    [Fact]
    public void An_approach_trips_while_arming_and_levels_keep_their_own_units()
    {
        var plan = ExplainBench.Plan("v", Off, new Sls
        {
            Name = "levels", Delay = "5 ms", Reaction = Reaction.Stop0, Approach = new() { Deceleration = "1 m/s²", Tolerance = "5 mm/s" },
            Levels = [new() { When = "gate", Limit = "2 m/min" }, new() { When = "always", Limit = "100 mm/s" }],
        });
        var lines = ExplainBench.Lines(plan, ("v", [50, 60, 90, 95, 95.5, 96, 60, 50, 20, 20]));
        Assert.Contains("At 0.003 s x, levels (SLS) trips, side approach, and demands stop 0 (STO).", lines);
        Assert.Contains("  It is always requested; its delay of 5 ms had not passed yet: it was still arming. Its limit of 2 m/min (level 0, when gate) was asked for at 0.002 s.", lines);
        Assert.Contains("  The speed above the ramp towards the limit to come (1 m/s²) was 6 mm/s, above the tolerance of 5 mm/s since 0.003 s.", lines);
        Assert.Contains("x, levels (SLS), upper (level 0, when gate): watched for 0.004 s; needs 3 m/min where the limit is 2 m/min: short by 1 m/min (50 % of it), "
            + "but it was already tripped then, or starting anew after an acknowledgement.", lines);
        Assert.Contains("x, levels (SLS), upper (level 1, when always): watched for 0.004 s; needs 96 mm/s where the limit is 100 mm/s: room of 4 mm/s (4 % of it).", lines);
    }

    [Fact]
    public void A_missing_value_has_words_of_its_own()
    {
        var plan = ExplainBench.Plan("v", Off, new Sls { Name = "set-up", Limit = "33 mm/s", Reaction = Reaction.Stop0 }) with { Missing = MissingPolicy.Trip };
        var lines = ExplainBench.Lines(plan, ("v", [0, double.NaN, 0]));
        Assert.Equal([
            "At 0.001 s x, set-up (SLS) trips, side invalid input, and demands stop 0 (STO).",
            "  It is always requested, and it has watched since 0 s.",
            "  A value that it needs is missing there, or time has a gap just before: it cannot know whether its limit holds, so it trips at once.",
            "  Avoided by a recording without the hole, or by \"missing\": \"hold\", which trusts the last value; no limit or filter of its own would.",
            "  At 0.001 s x has its torque off (STO, stop category 0), because of this trip.",
            "  The plan names no acknowledgement, so the trip stays latched."], lines.Skip(2).Take(6));
    }

    // A limit read aloud must not trip, and a value above it must not read like it.
    [Fact]
    public void Numbers_have_digits_enough()
    {
        var plan = ExplainBench.Plan("v", Off, new Sls { Name = "m", Limit = "33 mm/s", Reaction = Reaction.None });
        var lines = ExplainBench.Lines(plan, ("v", [0, 33.00000001, 0]));
        Assert.Contains("  The speed was 33.00000001 mm/s, above the limit of 33 mm/s since 0.001 s.", lines);
        Assert.Contains("  Avoided by a limit of 33.0001 mm/s, or a filter above 0 ms, or a delay above 1 ms, all else unchanged.", lines);
        Assert.Empty(Replay.Run(plan with { Axes = ExplainBench.Plan("v", Off, new Sls { Name = "m", Limit = "33.0001 mm/s", Reaction = Reaction.None }).Axes },
            Replays.Bench.Milliseconds(("v", [0, 33.00000001, 0]))).Trips);
    }

    [Fact]
    public void A_request_that_hangs_on_a_state_makes_the_advice_inexact()
    {
        var plan = ExplainBench.Plan("v", Off, new Sls { Name = "m", Request = "x.state == Running", Limit = "33 mm/s", Reaction = Reaction.None });
        Assert.Contains("  Avoided by a limit of 34 mm/s, or a filter above 0 ms, or a delay above 1 ms, all else unchanged. "
            + "This is not exact: the request depends on an output or a state, and it holds given the request as it was.", ExplainBench.Lines(plan, ("v", [0, 34, 0])));
    }

    [Fact]
    public void After_twenty_trips_the_rest_is_counted()
    {
        var monitors = Enumerable.Range(0, 23).Select(k => (MonitorPlan)new Sls { Name = $"m{k:00}", Limit = "33 mm/s", Reaction = Reaction.None }).ToArray();
        var lines = ExplainBench.Lines(ExplainBench.Plan("v", Off, monitors), ("v", [0, 34, 0]));
        Assert.Equal(20, lines.Count(line => line.StartsWith("At ", StringComparison.Ordinal)));
        Assert.Contains("And 3 more trips, which the JSON result lists.", lines);
    }

    private static Dictionary<string, SignalPlan> Signals(string from, string until) =>
        new() { ["gate"] = new() { Windows = [["2 ms", "1 s"]] }, ["reset"] = new() { Windows = [[from, until]] } };
}
