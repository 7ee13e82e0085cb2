using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Stops;

/// <summary>§4, acknowledgement, sentence by sentence: one cycle early, on time, late.</summary>
public class AcknowledgementTests
{
    private const string Stops = """ "SS1": { "request": "one", "variant": "t", "time": "3 ms" }, "SS2": { "request": "two", "variant": "t", "time": "3 ms" }, "SOS": { "window": "1 mm" } """;
    private const string Stop1 = """ "function": "SLS", "limit": "100 mm/s", "reaction": "stop 1" """;
    private const string Stop0 = """ "function": "SLS", "limit": "100 mm/s", "reaction": "stop 0" """;
    private const string None = """ "function": "SLS", "limit": "100 mm/s", "reaction": "none" """;

    private static string Told(string monitor, string recording, string on = "release") => string.Join("; ", Story.Of(Stops, monitor, Complete(recording), on));

    private static string Complete(string recording)
    {
        var length = recording[(recording.IndexOf(':', StringComparison.Ordinal) + 1)..].Split(';')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
        return recording + string.Concat(new[] { "p", "v", "one", "two" }.Where(name => !$"; {recording}".Contains($"; {name}:", StringComparison.Ordinal))
            .Select(name => $"; {name}: {string.Join(' ', Enumerable.Repeat("0", length))}"));
    }

    // "It counts on the release of its signal (true to false) unless the plan says `press`; an edge needs two cycles."
    [Theory]
    [InlineData("release", "1 1 0 0 0 0", "0 m upper; 2 m upper")]
    [InlineData("release", "1 0 0 0 0 0", "0 m upper; 1 m upper")]
    [InlineData("release", "0 0 1 1 1 1", "0 m upper")]
    [InlineData("release", "0 0 0 1 0 1", "0 m upper; 4 m upper")]
    [InlineData("press", "1 1 1 1 1 1", "0 m upper")]
    [InlineData("press", "1 1 0 0 0 0", "0 m upper")]
    [InlineData("press", "0 0 0 1 1 1", "0 m upper; 3 m upper")]
    [InlineData("press", "1 0 1 0 0 1", "0 m upper; 2 m upper; 5 m upper")]
    public void An_edge_counts(string on, string reset, string happens)
    {
        // "An acknowledgement acts before the monitors step": a speed that is still too high trips again in the same cycle; "reaction none included".
        Assert.Equal(happens, Told(None, "v: 101 101 101 101 101 101; reset: " + reset, on));
    }

    // It is a new request: delay and filter run again, in full.
    [Theory]
    [InlineData(""", "delay": "2 ms" """, "2 m upper; 6 m upper")]
    [InlineData(""", "filter": "2 ms" """, "2 m upper; 6 m upper")]
    [InlineData(""", "delay": "1 ms", "filter": "2 ms" """, "3 m upper; 7 m upper")]
    public void It_restarts_the_monitor(string more, string happens) =>
        Assert.Equal(happens, Told(None + more, "v: 101 101 101 101 101 101 101 101 101; reset: 0 0 0 1 0 0 0 0 0"));

    // "And only where no axis of the group is still stopping; otherwise it is logged and does nothing": stopping from 1 ms until 3 ms.
    [Theory]
    [InlineData("0 1 1 0 0 0 0 0", "1 m upper; 1 StoppingToOff; 4 TorqueOff", "ignored, still stopping")]
    [InlineData("0 1 1 1 0 0 0 0", "1 m upper; 1 StoppingToOff; 4 TorqueOff", "ignored, still stopping")]
    [InlineData("0 1 1 1 1 0 0 0", "1 m upper; 1 StoppingToOff; 4 TorqueOff; 5 Running", "acknowledged")]
    public void Not_while_stopping(string reset, string happens, string logged)
    {
        var result = Story.Replayed(Stops, Stop1, Complete("v: 0 101 0 0 0 0 0 0; reset: " + reset));
        Assert.Equal(happens, string.Join("; ", Story.Log(result)));
        Assert.Equal([logged], result.Events.Where(e => e.Source == "acknowledge").Select(e => e.Event));
    }

    // "(judged after requests have gone)": SS2 on demand goes at 3 ms; an acknowledgement in that cycle finds the axis running, one before finds it stopping.
    [Theory]
    [InlineData("0 0 1 0 0 0", "1 StoppingToHold; 1 m upper; 3 Running; 3 m upper")]
    [InlineData("0 1 0 0 0 0", "1 StoppingToHold; 1 m upper; 3 Running")]
    public void Judged_after_requests_have_gone(string reset, string happens) =>
        Assert.Equal(happens, string.Join("; ", Told(None, "v: 0 101 101 101 0 0; two: 0 1 1 0 0 0; reset: " + reset).Split("; ").OrderBy(line => line[0]).ThenBy(line => line, StringComparer.Ordinal)));

    // "A cause that was a trip ends by an acknowledgement while no stop request (STO, SS1, SS2) is present on the axis": the request goes at 6 ms.
    [Theory]
    [InlineData("one", "0 0 0 0 1 0 0 0 0", "1 m upper; 1 TorqueOff")]
    [InlineData("one", "0 0 0 0 1 1 0 0 0", "1 m upper; 1 TorqueOff; 6 Running")]
    [InlineData("one", "0 0 0 0 1 1 1 0 0", "1 m upper; 1 TorqueOff; 7 Running")]
    [InlineData("two", "0 0 0 0 1 0 0 0 0", "1 m upper; 1 TorqueOff")]
    [InlineData("two", "0 0 0 0 1 1 0 0 0", "1 m upper; 1 TorqueOff; 6 Running")]
    public void Not_while_a_stop_is_requested(string stop, string reset, string happens) =>
        Assert.Equal(happens, Told(Stop0, $"v: 0 101 0 0 0 0 0 0 0; {stop}: 0 0 1 1 1 1 0 0 0; reset: {reset}"));

    // The same holds for trips without a reaction, once the stop that is requested has ended; no page says so, the worked cases do.
    [Theory]
    [InlineData("one", "0 m upper; 2 StoppingToOff; 5 TorqueOff")]
    [InlineData("two", "0 m upper; 2 StoppingToHold; 5 Holding; 8 Running; 9 m upper")]
    public void No_latch_opens_while_a_stop_is_requested(string stop, string happens) =>
        Assert.Equal(happens, Told(None, $"v: 101 101 101 101 101 101 101 101 101 101; {stop}: 0 0 1 1 1 1 1 1 0 0; reset: 0 0 0 0 0 1 0 0 {(stop == "two" ? "1" : "0")} 0"));

    // "On all latched trips of the axis together": of the stop as well, so that it is told again when it happens again.
    [Fact]
    public void All_latches_open_together()
    {
        const string residual = """ "STO": { "residual": "3 N" } """;
        Assert.Equal("1 STO upper; 1 TorqueOff; 1 m upper; 5 Running; 6 STO upper; 6 TorqueOff; 6 m upper", string.Join("; ", Story.Of(residual, Stop0, """
            v:     0 101 0 0 0 0 101 0
            q:     9   9 9 9 9 9   9 9
            reset: 0   0 0 0 1 0   0 0
            """).OrderBy(line => line, StringComparer.Ordinal)));
    }
}
