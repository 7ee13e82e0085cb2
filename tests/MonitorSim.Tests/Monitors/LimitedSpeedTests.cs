using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>§3, SLS levels and approach, sentence by sentence. Levels: 30 mm/s while <c>fast</c>, 20 while <c>mid</c>, 10 while <c>slow</c>; delay 3 ms.</summary>
public class LimitedSpeedTests
{
    private const string Levels = """
        "function": "SLS", "delay": "3 ms", "reaction": "none", "levels": [
          { "when": "fast", "limit": "30 mm/s" }, { "when": "mid", "limit": "20 mm/s" }, { "when": "slow", "limit": "10 mm/s" } ]
        """;

    private const string Approach = Levels + """, "approach": { "deceleration": "2 m/s²", "tolerance": "1 mm/s" } """;

    // "The first whose `when` holds is chosen (none: the request counts as gone)."
    [Theory]
    [InlineData("v: 0 0 0 30   30.1; fast: 1 1 1 1 1; mid: 1 1 1 1 1; slow: 1 1 1 1 1", "4 m upper")]
    [InlineData("v: 0 0 0 10   10.1; fast: 0 0 0 0 0; mid: 0 0 0 0 0; slow: 1 1 1 1 1", "4 m upper")]
    [InlineData("v: 0 0 0 99 99 99 99 30.1; fast: 1 1 1 0 1 1 1 1; mid: 0 0 0 0 0 0 0 0; slow: 0 0 0 0 0 0 0 0", "7 m upper")]
    [InlineData("v: 0 0 0 30 99 99 99 30;   fast: 1 1 1 1 0 1 1 1; mid: 0 0 0 0 0 0 0 0; slow: 0 0 0 0 0 0 0 0", "")]
    public void The_first_level_that_holds_is_chosen(string recording, string happens) => Assert.Equal(happens, string.Join("; ", Story.Of("", Levels, recording)));

    // "A level given up at cycle s for a stricter one stays in force until c_n - c_s >= delay." Given up at 4 ms: in force until 6 ms, the stricter one from 7 ms on.
    [Theory]
    [InlineData("30 0", "")]
    [InlineData("30.1 0", "6 m upper")]
    [InlineData("0 10", "")]
    [InlineData("0 10.1", "7 m upper")]
    public void A_level_given_up_stays_for_the_delay(string at6And7, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", Levels, $"v: 0 0 0 0 30 30 {at6And7}; fast: 1 1 1 1 0 0 0 0; mid: 0 0 0 0 0 0 0 0; slow: 1 1 1 1 1 1 1 1")));

    // "The laxest limit in force counts": fast given up at 4 ms, mid at 5 ms: 30 until 6, 20 at 7, 10 from 8 on.
    [Theory]
    [InlineData(6, 30, "")]
    [InlineData(6, 30.1, "6 m upper")]
    [InlineData(7, 20, "")]
    [InlineData(7, 20.1, "7 m upper")]
    [InlineData(8, 10, "")]
    [InlineData(8, 10.1, "8 m upper")]
    public void The_laxest_limit_in_force_counts(int sample, double speed, string happens)
    {
        double[] v = new double[10];
        v[sample] = speed;
        Assert.Equal(happens, string.Join("; ", Story.Of("", Levels, FormattableString.Invariant(
            $"v: {string.Join(' ', v.Select(x => FormattableString.Invariant($"{x}")))}; fast: 1 1 1 1 0 0 0 0 0 0; mid: 0 0 0 0 1 0 0 0 0 0; slow: 0 0 0 0 0 1 1 1 1 1"))));
    }

    // "A laxer or equal one counts at once": 10 until 4 ms, 30 from 5 ms on.
    [Theory]
    [InlineData("10 30", "")]
    [InlineData("10.1 30", "4 m upper")]
    [InlineData("10 30.1", "5 m upper")]
    public void A_laxer_level_counts_at_once(string at4And5, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", Levels, $"v: 0 0 0 0 {at4And5} 0; fast: 0 0 0 0 0 1 1; mid: 0 0 0 0 0 0 0; slow: 1 1 1 1 1 1 1")));

    // A laxer one while a stricter one is pending: back to fast at 5 ms leaves nothing pending.
    [Fact]
    public void A_level_taken_up_again_is_in_force_without_a_break() =>
        Assert.Equal(["9 m upper"], Story.Of("", Levels, "v: 0 0 0 0 30 30 30 30 30 30.1; fast: 1 1 1 1 0 1 1 1 1 1; mid: 0 0 0 0 0 0 0 0 0 0; slow: 1 1 1 1 1 1 1 1 1 1"));

    // "Approach: a side of its own, compared while arming": asked for at 0 ms with 16 mm/s, 2 mm/s slower every ms, 1 mm/s above that is allowed.
    [Theory]
    [InlineData("16 15 13 10", "")]
    [InlineData("16 15.1 13 10", "1 m approach")]
    [InlineData("16 15 13.1 10", "2 m approach")]
    [InlineData("16 15 13 11.1", "3 m upper")]
    // "and only where |v| > the limit to come"
    [InlineData("9 10 10 10", "")]
    [InlineData("9 10.1 10 10", "1 m approach")]
    public void The_approach_is_compared_while_arming(string speeds, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", Approach, $"v: {speeds}; fast: 0 0 0 0; mid: 0 0 0 0; slow: 1 1 1 1")));

    // "and while a stricter level is pending", "t_a being the cycle at which the limit was asked for": watching fast, slow is asked for at 5 ms with 16 mm/s and is in
    // force at 8 ms; then the approach is no longer compared.
    [Theory]
    [InlineData("30 16 15 13 10", "")]
    [InlineData("30 16 15.1 13 10", "6 m approach")]
    [InlineData("30 16 15 13.1 10", "7 m approach")]
    [InlineData("30 16 15 13 10.1", "8 m upper")]
    [InlineData("30 30 29 27 10", "")]
    public void The_approach_is_compared_while_a_stricter_level_is_pending(string speeds, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", Approach, $"v: 0 0 0 0 {speeds}; fast: 1 1 1 1 1 0 0 0 0; mid: 0 0 0 0 0 0 0 0 0; slow: 1 1 1 1 1 1 1 1 1")));

    // "Without a speed there, it is not compared": a speed derived from positions has none at the first sample.
    [Theory]
    [InlineData(0, "")]
    [InlineData(1, "2 m approach")]
    public void Without_a_speed_where_it_was_asked_for_the_approach_is_not_compared(int askedAt, string happens)
    {
        // 20 mm/s, then 40 mm/s.
        var slow = string.Join(' ', Enumerable.Range(0, 4).Select(k => k >= askedAt ? 1 : 0));
        const string monitor = """ "function": "SLS", "request": "slow", "delay": "9 ms", "limit": "10 mm/s", "reaction": "none", "approach": { "deceleration": "1 mm/s²", "tolerance": "1 mm/s" } """;
        Assert.Equal(happens, string.Join("; ", Story.Of("", monitor, $"p: 0 0.02 0.06 0.1; slow: {slow}")));
    }
}
