using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Stops;

/// <summary>§4, demands and the causes that they leave, sentence by sentence. The monitor trips above 100 mm/s; sto, one, two and hold are requests of the stops.</summary>
public class CauseTests
{
    private const string Stops = """
        "STO": { "request": "sto" }, "SS1": { "request": "one", "variant": "t", "time": "3 ms" }, "SS2": { "request": "two", "variant": "t", "time": "3 ms" },
        "SOS": { "request": "hold", "window": "1 mm" }
        """;

    private static string Told(string recording, string reaction = "stop 1")
    {
        // Signals that a row does not name are false, and so is speed 0.
        var length = recording[(recording.IndexOf(':', StringComparison.Ordinal) + 1)..].Split(';')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
        var missing = new[] { "p", "v", "sto", "one", "two", "hold", "reset" }.Where(name => !recording.Split(';').Any(column => column.Split(':')[0].Trim() == name));
        var zeros = string.Concat(missing.Select(name => $"; {name}: {string.Join(' ', Enumerable.Repeat("0", length))}"));
        return string.Join("; ", Story.Of(Stops, $$""" "function": "SLS", "limit": "100 mm/s", "reaction": "{{reaction}}" """, recording + zeros));
    }

    // "Demands come from trips (stop 0 = STO, stop 1 = SS1, stop 2 = SS2, none) and from the axis's stops that carry a request."
    [Theory]
    [InlineData("stop 0", "v: 0 100 101 0 0 0 0", "2 m upper; 2 TorqueOff")]
    [InlineData("stop 1", "v: 0 100 101 0 0 0 0", "2 m upper; 2 StoppingToOff; 5 TorqueOff")]
    [InlineData("stop 2", "v: 0 100 101 0 0 0 0", "2 m upper; 2 StoppingToHold; 5 Holding")]
    [InlineData("none", "v: 0 100 101 0 0 0 0", "2 m upper")]
    [InlineData("none", "sto: 0 0 1 1 1 1 1", "2 TorqueOff")]
    [InlineData("none", "one: 0 0 1 1 1 1 1", "2 StoppingToOff; 5 TorqueOff")]
    [InlineData("none", "two: 0 0 1 1 1 1 1", "2 StoppingToHold; 5 Holding")]
    [InlineData("none", "hold: 0 0 1 1 1 1 1", "2 Holding")]
    // From the first cycle on, where it holds from the start.
    [InlineData("none", "hold: 1 1 1", "0 Holding")]
    public void Demands(string reaction, string recording, string happens) => Assert.Equal(happens, Told(recording, reaction));

    // "A demand whose state is more severe than the present one takes over at once. An equal or lesser one is logged, is kept as a cause, and changes nothing."
    [Theory]
    [InlineData("hold: 0 1 1 1 1 1 1; two: 0 0 1 1 1 1 1", "1 Holding")]
    [InlineData("hold: 0 1 1 1 1 1 1; one: 0 0 1 1 1 1 1", "1 Holding; 2 StoppingToOff; 5 TorqueOff")]
    [InlineData("hold: 0 1 1 1 1 1 1; sto: 0 0 1 1 1 1 1", "1 Holding; 2 TorqueOff")]
    [InlineData("two: 0 1 1 1 1 1 1 1; one: 0 0 0 1 1 1 1 1", "1 StoppingToHold; 3 StoppingToOff; 6 TorqueOff")]
    [InlineData("two: 0 1 1 1 1 1 1 1; hold: 0 0 0 1 1 1 1 1", "1 StoppingToHold; 4 Holding")]
    [InlineData("one: 0 1 1 1 1 1 1 1; two: 0 0 1 1 1 1 1 1", "1 StoppingToOff; 4 TorqueOff")]
    [InlineData("one: 0 1 1 1 1 1 1 1; sto: 0 0 1 1 1 1 1 1", "1 StoppingToOff; 2 TorqueOff")]
    [InlineData("sto: 0 1 1 1 1 1 1 1; one: 0 0 1 1 1 1 1 1", "1 TorqueOff")]
    // Equal: the stop goes on from its own beginning.
    [InlineData("v: 0 101 0 0 0 0 0; one: 0 0 0 1 1 1 1", "1 m upper; 1 StoppingToOff; 4 TorqueOff")]
    // Of several in one cycle the most severe.
    [InlineData("two: 0 1 1 1 1 1; one: 0 1 1 1 1 1; hold: 0 1 1 1 1 1", "1 StoppingToOff; 4 TorqueOff")]
    [InlineData("v: 0 101 0 0 0 0; sto: 0 1 1 1 1 1", "1 m upper; 1 TorqueOff")]
    public void Severity(string recording, string happens) => Assert.Equal(happens, Told(recording));

    // "A cause that was a request ends when the request goes"; "the axis takes the state that those left ask for (SS2 and SOS: Holding, without a new ramp), Running if none is left."
    [Theory]
    [InlineData("hold: 0 1 1 0 0", "1 Holding; 3 Running")]
    [InlineData("two: 0 1 1 0 0 0", "1 StoppingToHold; 3 Running")]
    [InlineData("two: 0 1 1 1 1 1 0 0", "1 StoppingToHold; 4 Holding; 6 Running")]
    // Kept as a cause: SS2 while Holding keeps holding, without a ramp of its own.
    [InlineData("hold: 0 1 1 1 0 0 0 0; two: 0 0 1 1 1 1 0 0", "1 Holding; 6 Running")]
    // A request to hold that came during SS2 is left where that goes.
    [InlineData("two: 0 1 1 0 0 0 0 0; hold: 0 0 1 1 1 1 0 0", "1 StoppingToHold; 3 Holding; 6 Running")]
    // "In StoppingToOff and TorqueOff it ends only by an acknowledgement."
    [InlineData("one: 0 1 0 0 0 0 0", "1 StoppingToOff; 4 TorqueOff")]
    [InlineData("sto: 0 1 0 0 0 0 0", "1 TorqueOff")]
    // Of the cause of a lesser demand too: holding was asked for, and is no longer.
    [InlineData("hold: 1 1 0 0 0 0 0; sto: 0 1 0 0 0 0 0; reset: 0 0 0 1 0 0 0", "0 Holding; 1 TorqueOff; 4 Running")]
    // It begins anew: a new ramp once the request comes again.
    [InlineData("two: 0 1 1 0 1 1 1 1", "1 StoppingToHold; 3 Running; 4 StoppingToHold; 7 Holding")]
    public void Requests_that_go(string recording, string happens) => Assert.Equal(happens, Told(recording));

    // "or later": acknowledged at the release; one cycle before the request goes it does nothing, in the cycle in which it goes it does.
    [Theory]
    [InlineData("sto: 0 1 1 1 0 0 0; reset: 0 0 1 0 0 0 0", "1 TorqueOff")]
    [InlineData("sto: 0 1 1 1 0 0 0; reset: 0 0 1 1 0 0 0", "1 TorqueOff; 4 Running")]
    [InlineData("sto: 0 1 1 1 0 0 0; reset: 0 0 1 1 1 0 0", "1 TorqueOff; 5 Running")]
    // SS2 and SOS that are left hold; SS1 that is left keeps torque off.
    [InlineData("sto: 0 1 0 0 0 0 0 0; hold: 0 0 1 1 1 1 0 0; reset: 0 0 1 0 0 0 0 0", "1 TorqueOff; 3 Holding; 6 Running")]
    [InlineData("sto: 0 1 0 0 0 0 0 0; two: 0 0 1 1 1 1 0 0; reset: 0 0 1 0 0 0 0 0", "1 TorqueOff; 3 Holding; 6 Running")]
    [InlineData("sto: 0 1 0 0 0 0 0 0; one: 0 0 1 1 1 1 0 0; reset: 0 0 1 0 0 0 0 0", "1 TorqueOff")]
    public void Requests_that_ended_under_torque_off(string recording, string happens) => Assert.Equal(happens, Told(recording));

    // "SS2 ends in Holding, where SOS watches from that cycle on, moving or not"; "a violation of SOS leads to TorqueOff at once": 1 mm from where Holding began (4 ms).
    [Theory]
    [InlineData("two: 0 1 1 1 1 1 1; p: 0 0 5 9 20 21 19; v: 90 90 90 90 90 90 90", "1 StoppingToHold; 4 Holding")]
    [InlineData("two: 0 1 1 1 1 1 1; p: 0 0 5 9 20 21.1 19; v: 90 90 90 90 90 90 90", "1 StoppingToHold; 4 Holding; 5 SOS window; 5 TorqueOff")]
    [InlineData("hold: 0 1 1 1 1 1 1; p: 9 5 6 4 5 3.9 5", "1 Holding; 5 SOS window; 5 TorqueOff")]
    // Each Holding from its own beginning.
    [InlineData("hold: 0 1 1 0 1 1 1; p: 0 0 1 2 3 4 4.1", "1 Holding; 3 Running; 4 Holding; 6 SOS window; 6 TorqueOff")]
    // A request to hold that outlasts the violation holds again after the acknowledgement, from there.
    [InlineData("hold: 0 1 1 1 1 1 1; p: 0 0 1.1 9 9 10 10.1; reset: 0 0 0 1 0 0 0", "1 Holding; 2 SOS window; 2 TorqueOff; 4 Holding; 6 SOS window; 6 TorqueOff")]
    public void Holding(string recording, string happens) => Assert.Equal(happens, Told(recording));

    // "`cause` names all causes that act in that cycle, in order; else standstill, time, released."
    [Fact]
    public void Causes_are_named()
    {
        var result = Story.Replayed(Stops, """ "function": "SLS", "limit": "100 mm/s", "reaction": "stop 1" """, """
            p: 0 0 0 0 0 0 0 0 0 0 0; v: 0 101 0 0 0 0 0 0 0 0 0; sto: 0 0 0 0 0 0 0 0 0 0 0; one: 0 1 1 0 0 0 0 0 0 0 0; two: 0 1 0 0 0 0 0 0 0 0 0; hold: 0 0 0 0 0 0 0 0 0 1 0; reset: 0 0 0 0 0 1 0 0 0 0 0
            """);
        Assert.Equal([("StoppingToOff", "x.SS1, x.m"), ("TorqueOff", "time"), ("Running", "released"), ("Holding", "x.SOS"), ("Running", "released")],
            result.States.Single().Changes.Select(change => (change.State.ToString(), change.Cause)));
    }
}
