using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Explain;

/// <summary>What is said of monitors that did not trip, and of recordings that prove nothing about them.</summary>
public class RoomSentencesTests
{
    private static readonly StopsPlan Off = new() { Sto = new() };

    private static IReadOnlyList<string> Lines(MonitorPlan monitor, params double[] v) => ExplainBench.Lines(ExplainBench.Plan("v", Off, monitor), ("v", v));

    private static Sls Limit(string? request = null, string? delay = null, string? filter = null) =>
        new() { Name = "m", Reaction = Reaction.None, Limit = "2 m/min", Request = request, Delay = delay, Filter = filter };

    [Fact]
    public void Room_is_said_in_the_users_unit_and_in_percent() => InCulture.Each(() =>
        Assert.Contains("x, m (SLS), upper: watched for 0.002 s; needs 1.8 m/min where the limit is 2 m/min: room of 0.2 m/min (10 % of it).", Lines(Limit(), 0, 30, 0)));

    [Fact]
    public void What_the_filter_lets_pass_is_said()
    {
        Assert.Contains("x, m (SLS), upper: watched for 0.006 s; needs 0.12 m/min where the limit is 2 m/min: room of 1.88 m/min (94 % of it)."
            + " It was above it 2 times, at longest for 1 ms, at 0.003 s, which its filter of 2 ms lets pass.", Lines(Limit(filter: "2 ms"), 2, 40, 2, 40, 41, 2, 2));
        Assert.Contains(Lines(Limit(filter: "2 ms"), 2, 40, 2, 2), line => line.EndsWith("It was above it once for a single cycle, at 0.001 s, which its filter of 2 ms lets pass.", StringComparison.Ordinal));
    }

    [Fact]
    public void At_the_limit_there_is_no_room() =>
        Assert.Contains("x, m (SLS), upper: watched for 0.002 s; needs 3 m/min where the limit is 3 m/min: exactly at it, which is allowed, without room.",
            Lines(Limit() with { Limit = "3 m/min" }, 0, 50, 0));

    [Fact]
    public void The_other_side_of_a_monitor_that_tripped_has_its_room_said() =>
        Assert.Contains("x, m (SSR), lower: watched for 0.002 s; needs 20 mm/s where the limit is 12 mm/s: room of 8 mm/s (66.7 % of it).",
            Lines(new Ssr { Name = "m", Reaction = Reaction.None, Lower = "12 mm/s", Upper = "40 mm/s" }, 20, 50, 30));

    [Fact]
    public void What_was_never_challenged_proves_nothing()
    {
        Assert.Contains("x, m (SLS): never requested. This recording proves nothing about it.", Lines(Limit("never"), 0, 0, 0, 0));
        Assert.Contains("x, m (SLS): requested 1 time, but never watching: each time it, or the recording, ended before its delay of 5 ms had passed (1 ms at most). Until then nothing is compared. This recording proves nothing about it.",
            Lines(Limit("gate", delay: "5 ms"), 0, 0, 0, 0));
        Assert.Contains("x, m (SLS): watched for 0.003 s, but never compared for as long as its filter of 5 ms. This recording proves nothing about it.",
            Lines(Limit(filter: "5 ms"), 0, 0, 0, 0));

        // The first sample has no derived speed, and the request lasts no longer.
        var derived = ExplainBench.Plan("p", Off, Limit("not later"));
        var signals = new Dictionary<string, SignalPlan>(derived.Signals) { ["later"] = new() { Windows = [["1 ms", "1 s"]] } };
        Assert.Contains("x, m (SLS): watched for single cycles only, but there was never a value to compare. This recording proves nothing about it.",
            ExplainBench.Lines(derived with { Signals = signals }, ("p", [0, 0, 0])));
    }

    [Fact]
    public void A_stop_that_never_began_proves_nothing()
    {
        var stops = Off with { Ss1 = new() { Variant = StopVariant.Ramp, Deceleration = "1 m/s²", Tolerance = "1 mm/s" } };
        Assert.Contains("x, SS1: the stop never began. This recording proves nothing about it.", ExplainBench.Lines(ExplainBench.Plan("v", stops), ("v", [0, 0])));
    }

    [Fact]
    public void A_temperature_without_reaction_switches_only()
    {
        var lines = ExplainBench.Lines(ExplainBench.Plan("T", Off, new Smt { Name = "m", Limit = "80 °C" }), ("T", [70, 85, 90]));
        Assert.Contains("x, m (SMT), upper: watched for 0.002 s; needs 90 °C where the limit is 80 °C: short by 10 °C (12.5 % of it), but it has no reaction and only switches its output.", lines);
        Assert.Contains("x, m (SMT): its output was on from 0 s to 0.001 s.", lines);
    }

    [Fact]
    public void Warnings_and_the_caution_close_the_story()
    {
        var lines = Lines(Limit(), 0, 0, 0);
        Assert.Equal("Test bench, on array (0.002 s): nothing tripped.", lines[0]);
        Assert.DoesNotContain(lines, line => line.Contains("x.acceleration", StringComparison.Ordinal));
        Assert.Contains("Note: x.acceleration is not recorded: derived from velocity by difference: 0.5 ms late, white noise times 1414.214 1/s.",
            Lines(new Sar { Name = "m", Reaction = Reaction.None, Upper = "1 m/s²" }, 0, 0, 0));
        Assert.Equal(Cautions.Text, lines[^1]);
    }
}
