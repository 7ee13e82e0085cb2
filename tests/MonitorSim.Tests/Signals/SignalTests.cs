using MonitorSim.Signals;
using MonitorSim.Tests.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Signals;

/// <summary>Signals from words, numbers and windows, as a monitor's request sees them.</summary>
public class SignalTests
{
    private static Plan PlanWith(string signal, string head = "") => Bench.Linear("v", """ "function": "SLS", "request": "s", "limit": "1 mm/s" """, $$"""{{head}} "signals": { "s": {{signal}} }, """);

    private static (decimal From, decimal Until)[] Stretches(Plan plan, Trace trace) =>
        [.. Replay.Run(plan, trace).Watching.Single().Stretches.Select(stretch => (stretch.RequestedAt * 1000, stretch.Until * 1000))];

    private static Trace Words(params string[] cells)
    {
        var words = cells.Where(cell => cell.Length > 0).Distinct().ToArray();
        return new("array", [.. cells.Select((_, k) => k * 1_000_000L)],
            [new NumberColumn("v", null, new double[cells.Length]), new WordColumn("s", [.. cells.Select(cell => Array.IndexOf(words, cell))], words)]);
    }

    [Fact]
    public void Words_in_any_case_and_numbers_alike_the_last_value_holds()
    {
        var plan = PlanWith("""{ "column": "s" }""");
        Assert.Equal([(1m, 2m), (4m, 5m), (7m, 7m)], Stretches(plan, Words("", "TRUE", "", "Off", "on", "1.0", "0", "1")));
        Assert.Equal([(1m, 2m)], Stretches(plan, Bench.Milliseconds(("v", new double[4]), ("s", [0, 1, double.NaN, 0]))));
    }

    [Theory]
    [InlineData("2", "2,2.0,02,2e0", "3,-2,on")]
    [InlineData("2.50", "2.5,2.500", "2.51,2")]
    [InlineData("\"Auto\"", "Auto,AUTO,auto", "Automatic,1")]
    public void Equals_compares_numbers_as_numbers_and_text_as_text(string value, string equal, string other)
    {
        var plan = PlanWith($$"""{ "column": "s", "equals": {{value}} }""");
        var right = equal.Split(',');
        Assert.Equal([(0m, right.Length - 1)], Stretches(plan, Words([.. right, .. other.Split(',')])));
    }

    [Fact]
    public void A_window_holds_from_its_beginning_until_before_its_end()
    {
        Assert.Equal([(2m, 3m), (5m, 5m)], Stretches(PlanWith("""{ "windows": [["2 ms", "4 ms"], ["4.000001 ms", "5.5 ms"]] }"""), Words("a", "a", "a", "a", "a", "a", "a")));
    }

    [Fact]
    public void A_pulse_that_no_cycle_sees_does_not_exist_and_is_warned_of()
    {
        var plan = PlanWith("""{ "column": "s" }""", """ "cycle": "4 ms", """);
        var trace = Words("0", "0", "1", "0", "0", "0", "0", "0", "1");
        Assert.Equal([(8m, 8m)], Stretches(plan, trace));
        Assert.Contains(Replay.Run(plan, trace).Warnings, warning => warning.Contains('s', StringComparison.Ordinal));
        Assert.DoesNotContain(Replay.Run(PlanWith("""{ "column": "s" }"""), trace).Warnings, warning => warning.Contains("pulse", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void What_is_neither_true_nor_false_is_named()
    {
        var e = Assert.Throws<InputException>(() => Replay.Run(PlanWith("""{ "column": "s" }"""), Words("0", "maybe", "1")));
        Assert.Equal(["array(sample 1, column 's'): 'maybe' is neither true nor false; write 0/1, true/false or on/off, or give the signal an \"equals\""], e.Problems.Select(p => p.ToString()));
    }
}
