using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>§3, "Outputs", sentence by sentence, for SCA, SSM and SMT: range 10 to 20 mm or mm/s; up to 80 °C.</summary>
public class OutputBoundaryTests
{
    private const string Cam = """ "function": "SCA", "ranges": [["10 mm", "20 mm"]] """;
    private const string Speed = """ "function": "SSM", "lower": "10 mm/s", "upper": "20 mm/s" """;
    private const string Temperature = """ "function": "SMT", "limit": "80 °C" """;

    // "On when lo+h <= p <= hi-h, off when p < lo or p > hi"; SSM and SMT alike.
    [Theory]
    [InlineData(Cam, "p: 0 9.9 10 20 20.1 10", "2 m on; 4 m off; 5 m on")]
    [InlineData(Cam + """, "hysteresis": "1 mm" """, "p: 10.9 11 10 9.9 19.1 19 20 20.1", "1 m on; 3 m off; 5 m on; 7 m off")]
    [InlineData(Cam + """, "hysteresis": "5 mm" """, "p: 14.9 15 10 20", "1 m on")]
    [InlineData(Speed, "v: 0 -9.9 -10 -20 -20.1 10", "2 m on; 4 m off; 5 m on")]
    [InlineData(Speed + """, "hysteresis": "1 mm/s" """, "v: 10.9 11 -10 9.9 19.1 -19 20 20.1", "1 m on; 3 m off; 5 m on; 7 m off")]
    [InlineData(""" "function": "SSM", "upper": "20 mm/s", "hysteresis": "1 mm/s" """, "v: 19.1 -19 20 -20.1 0", "1 m on; 3 m off; 4 m on")]
    [InlineData(""" "function": "SSM", "lower": "-20 mm/s", "upper": "-10 mm/s", "signed": true """, "v: 15 -9.9 -10 -20 -20.1", "2 m on; 4 m off")]
    [InlineData(Temperature, "T: 80.1 80 80.1 80", "1 m on; 2 m off; 3 m on")]
    [InlineData(Temperature + """, "hysteresis": "5 K" """, "T: 75.1 75 80 80.1 75.1 75", "1 m on; 3 m off; 5 m on")]
    public void It_turns_on_with_room_and_off_when_it_fails(string monitor, string recording, string happens) => Assert.Equal(happens, string.Join("; ", Story.Of("", monitor, recording)));

    // "Delays count from the cycle at which the condition began to hold, or to fail, without interruption."
    [Theory]
    [InlineData("3 ms", "0 ms", "0 15 15 15 0 15", "")]
    [InlineData("3 ms", "0 ms", "0 15 15 15 15 0", "4 m on; 5 m off")]
    [InlineData("3 ms", "0 ms", "0 15 15 0 15 15 15 15", "7 m on")]
    [InlineData("2.000001 ms", "0 ms", "0 15 15 15 15 15", "4 m on")]
    [InlineData("2 ms", "0 ms", "0 15 15 15 15 15", "3 m on")]
    [InlineData("0 ms", "2 ms", "15 0 0 15 0 0 0 15", "0 m on; 6 m off; 7 m on")]
    [InlineData("0 ms", "2.000001 ms", "15 0 0 0 0 15", "0 m on; 4 m off; 5 m on")]
    public void Its_delays_count_without_interruption(string onDelay, string offDelay, string positions, string happens)
    {
        Assert.Equal(happens, string.Join("; ", Story.Of("", $"""{Cam}, "onDelay": "{onDelay}", "offDelay": "{offDelay}" """, "p: " + positions)));
        Assert.Equal(happens, string.Join("; ", Story.Of("", $"""{Speed}, "onDelay": "{onDelay}", "offDelay": "{offDelay}" """, "v: " + positions)));

        // 15 is warm, 0 is hot.
        var temperatures = string.Join(' ', positions.Split(' ').Select(cell => cell == "0" ? "90" : "15"));
        Assert.Equal(happens, string.Join("; ", Story.Of("", $"""{Temperature}, "onDelay": "{onDelay}", "offDelay": "{offDelay}" """, "T: " + temperatures)));
    }

    // "Outputs are off while the monitor is neither Watching nor Tripped." Requested from 2 ms until 6 ms, armed for 1 ms; the on-delay counts from the first watching cycle.
    [Theory]
    [InlineData("0 ms", "3 m on; 6 m off")]
    [InlineData("2 ms", "5 m on; 6 m off")]
    [InlineData("3 ms", "")]
    public void It_is_off_unless_watching(string onDelay, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of("", $"""{Cam}, "request": "ask", "delay": "1 ms", "onDelay": "{onDelay}", "offDelay": "9 ms" """, "p: 15 15 15 15 15 15 15 15; ask: 0 0 1 1 1 1 0 0")));

    // A tripped monitor goes on although its request has gone: so does its output.
    [Fact]
    public void It_goes_on_while_tripped() =>
        Assert.Equal(["1 m on", "2 m off", "2 m upper", "4 m on", "5 m off", "6 m on", "7 m off"], Story.Of("", Temperature + """, "request": "ask", "reaction": "stop 0" """, """
            T:     90 80 81 81 80 81 80 80 80
            ask:    0  1  1  0  0  0  0  0  0
            reset:  0  0  0  0  0  0  1  0  0
            """).Where(line => line.Contains(" m ", StringComparison.Ordinal)).Order(StringComparer.Ordinal));

    // "SCA, SSM: no trip"; "SMT with reaction none never trips."
    [Theory]
    [InlineData(Cam, "p: 15 99")]
    [InlineData(Speed, "v: 15 99")]
    [InlineData(Temperature, "T: 15 99")]
    public void It_trips_nothing_by_itself(string monitor, string recording) => Assert.Equal(["0 m on", "1 m off"], Story.Of("", monitor, recording));

    // "SLP and SCA windows that wrap": 350 to 10 deg with 2 deg of hysteresis.
    [Theory]
    [InlineData(351.9, 352.0)]
    [InlineData(8.1, 8.0)]
    [InlineData(-8.1, 368)]
    public void A_range_may_wrap(double without, double with)
    {
        var plan = Bench.Plan("""
            "motion": "rotary", "modulo": "360 deg", "channels": { "position": { "column": "p", "unit": "deg" } }, "stops": { "STO": {} },
            "monitors": [ { "name": "m", "function": "SCA", "ranges": [["350 deg", "10 deg"]], "hysteresis": "2 deg" } ]
            """);
        Assert.Equal(["1 m on", "4 m off"], Story.Log(Replay.Run(plan, Bench.Milliseconds(("p", [without, with, 350, 10, 10.1])))));
        Assert.Equal(["1 m on", "3 m off"], Story.Log(Replay.Run(plan, Bench.Milliseconds(("p", [without, with, 350, 349.9])))));
    }
}
