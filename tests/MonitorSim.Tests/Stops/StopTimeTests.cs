using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Stops;

/// <summary>§4, how SS1 and SS2 begin, are compared and end: each sentence for both, just before, on time and after. Standstill is 1 mm/s; the stop begins at 1 ms.</summary>
public class StopTimeTests
{
    private const string Hold = """, "SOS": { "window": "99 mm" } """;

    private static string Told(string parameters, string recording, string stop = "SS1") =>
        string.Join("; ", Story.Of($$""" "{{stop}}": { "request": "ask", {{parameters}} } """ + (stop == "SS2" ? Hold : ""), "", "p: 0 0 0 0 0 0 0 0; ask: 0 1 1 1 1 1 1 1; " + recording));

    // "t: nothing compared; ends at the first cycle with c_n - t_s >= time", moving or not.
    [Theory]
    [InlineData("SS1", "3 ms", "1 StoppingToOff; 4 TorqueOff")]
    [InlineData("SS1", "2.000001 ms", "1 StoppingToOff; 4 TorqueOff")]
    [InlineData("SS1", "2 ms", "1 StoppingToOff; 3 TorqueOff")]
    [InlineData("SS1", "0.000001 ms", "1 StoppingToOff; 2 TorqueOff")]
    [InlineData("SS1", "0 ms", "1 TorqueOff")]
    [InlineData("SS2", "3 ms", "1 StoppingToHold; 4 Holding")]
    [InlineData("SS2", "2.000001 ms", "1 StoppingToHold; 4 Holding")]
    [InlineData("SS2", "0 ms", "1 Holding")]
    public void By_time(string stop, string time, string happens) => Assert.Equal(happens, Told($""" "variant": "t", "time": "{time}" """, "v: 50 50 60 70 80 90 99 99", stop));

    // "r and d end when |v| <= standstill has lasted `settle` (default 0) within the stop": standing before it does not count, and moving once more begins anew.
    [Theory]
    [InlineData("0 ms", "0 5 1.1 1 0 0 0 0", 3)]
    [InlineData("2 ms", "0 5 1 1 1 0 0 0", 4)]
    [InlineData("1.000001 ms", "0 5 1 1 1 0 0 0", 4)]
    [InlineData("1 ms", "0 5 1 1 1 0 0 0", 3)]
    [InlineData("2 ms", "0 5 1 1 1.1 1 1 1", 7)]
    [InlineData("2 ms", "0 0 0 0 0 0 0 0", 3)]
    [InlineData("0 ms", "0 0 0 0 0 0 0 0", 1)]
    public void By_standstill(string settle, string speeds, int end)
    {
        foreach (var variant in new[] { """ "variant": "r", "deceleration": "1 mm/s²", "tolerance": "9 mm/s" """, """ "variant": "d", "deceleration": "1 mm/s²", "delay": "99 ms" """ })
        {
            Assert.Equal(end == 1 ? "1 TorqueOff" : $"1 StoppingToOff; {end} TorqueOff", Told($"""{variant}, "settle": "{settle}" """, "v: " + speeds));
            Assert.Equal(end == 1 ? "1 Holding" : $"1 StoppingToHold; {end} Holding", Told($"""{variant}, "settle": "{settle}" """, "v: " + speeds, "SS2"));
        }
    }

    // "r: where |v| > standstill, |v| - (v0 - deceleration·max(0, c_n - t_s - delay)) vs tolerance": 20 mm/s at t_s, 5 mm/s less every ms from 1 + delay on, 2 mm/s above are allowed.
    [Theory]
    [InlineData("0 ms", "20 17 12 7 2", "")]
    [InlineData("0 ms", "20 17.1 12 7 2", "2 S ramp")]
    [InlineData("0 ms", "20 17 12 7.1 2", "4 S ramp")]
    [InlineData("0 ms", "-20 -17 12 -7 -2.1", "5 S ramp")]
    [InlineData("1 ms", "20 22 17 12 7", "")]
    [InlineData("1 ms", "20 22.1 17 12 7", "2 S ramp")]
    [InlineData("1 ms", "20 22 17.1 12 7", "3 S ramp")]
    [InlineData("1.5 ms", "20 22 19.5 14.5 9.5", "")]
    [InlineData("1.5 ms", "20 22 19.6 14.5 9.5", "3 S ramp")]
    // Not where |v| <= standstill, however far above the ramp: v0 = 1.5, at 3 ms the ramp is below 0.
    [InlineData("0 ms", "1.5 1 0 1 1", "")]
    [InlineData("0 ms", "1.5 0 1.1 0 0", "3 S ramp")]
    public void By_ramp(string delay, string speeds, string violation)
    {
        var parameters = $""" "variant": "r", "deceleration": "5 m/s²", "delay": "{delay}", "tolerance": "{(speeds.StartsWith("1.5", StringComparison.Ordinal) ? 0 : 2)} mm/s", "settle": "9 ms" """;
        foreach (var stop in new[] { "SS1", "SS2" })
        {
            var (state, told) = (stop == "SS1" ? "1 StoppingToOff" : "1 StoppingToHold", Told(parameters, $"v: 0 {speeds} 0 0", stop));
            Assert.Equal(violation.Length == 0 ? state : $"{state}; {violation.Replace("S", stop, StringComparison.Ordinal)}; {violation[0]} TorqueOff", told);
        }
    }

    // "d: after delay and while |v| > standstill, sign(v)·a vs -deceleration, with `filter`": 5000 mm/s² from 1 + delay on.
    [Theory]
    [InlineData("0 ms", "0 ms", "-5000 -5000 -5000 -5000", "")]
    [InlineData("0 ms", "0 ms", "-4999 -5000 -5000 -5000", "1 S deceleration")]
    [InlineData("2 ms", "0 ms", "9 9 -5000 -5000", "")]
    [InlineData("2 ms", "0 ms", "9 9 -4999 -5000", "3 S deceleration")]
    [InlineData("2.000001 ms", "0 ms", "9 9 9 -5000", "")]
    [InlineData("0 ms", "1 ms", "9 -5000 9 -5000", "")]
    [InlineData("0 ms", "1 ms", "-5000 9 9 -5000", "3 S deceleration")]
    [InlineData("0 ms", "1.000001 ms", "9 9 -5000 9", "")]
    public void By_deceleration(string delay, string filter, string accelerations, string violation)
    {
        var parameters = $""" "variant": "d", "deceleration": "5 m/s²", "delay": "{delay}", "filter": "{filter}", "settle": "9 ms" """;
        foreach (var stop in new[] { "SS1", "SS2" })
        {
            var told = Told(parameters, $"v: 9 9 9 9 9 1 1 1; a: 0 {accelerations} 0 0 0", stop);
            var state = stop == "SS1" ? "1 StoppingToOff" : "1 StoppingToHold";

            // "Of states passed within one cycle only the last is logged."
            var expected = violation.Length == 0 ? state : $"{violation.Replace("S", stop, StringComparison.Ordinal)}; {violation[0]} TorqueOff";
            Assert.Equal(violation.Length == 0 || violation[0] == '1' ? expected : $"{state}; {expected}", told);
        }
    }

    // "An optional timeLimit trips at the first cycle with c_n - t_s > timeLimit at which the stop has not ended before."
    [Theory]
    [InlineData("2 ms", "9 9 0 0 0", "1 StoppingToOff; 3 TorqueOff")]
    [InlineData("2 ms", "9 9 9 0 0", "1 StoppingToOff; 4 SS1 timeLimit; 4 TorqueOff")]
    [InlineData("2 ms", "9 9 9 9 0", "1 StoppingToOff; 4 SS1 timeLimit; 4 TorqueOff")]
    [InlineData("2.999999 ms", "9 9 9 9 0", "1 StoppingToOff; 4 SS1 timeLimit; 4 TorqueOff")]
    [InlineData("3 ms", "9 9 9 9 0", "1 StoppingToOff; 5 SS1 timeLimit; 5 TorqueOff")]
    [InlineData("3 ms", "9 9 9 0 0", "1 StoppingToOff; 4 TorqueOff")]
    [InlineData("0 ms", "0 0 0 0 0", "1 TorqueOff")]
    [InlineData("0 ms", "9 0 0 0 0", "1 StoppingToOff; 2 SS1 timeLimit; 2 TorqueOff")]
    public void Within_its_time_limit(string limit, string speeds, string happens)
    {
        foreach (var variant in new[] { """ "variant": "r", "deceleration": "1 mm/s²", "tolerance": "99 mm/s" """, """ "variant": "d", "deceleration": "1 mm/s²", "delay": "99 ms" """ })
            Assert.Equal(happens, Told($"""{variant}, "timeLimit": "{limit}" """, $"v: 0 {speeds} 0 0"));
    }

    // "SBC: STO commands it at once, SS1 where it would end; then TorqueOff comes at the first cycle `apply` or more after the command." SS2 does not command it.
    [Theory]
    [InlineData("2 ms", "1 StoppingToOff; 3 SBC on; 5 TorqueOff")]
    [InlineData("1.000001 ms", "1 StoppingToOff; 3 SBC on; 5 TorqueOff")]
    [InlineData("1 ms", "1 StoppingToOff; 3 SBC on; 4 TorqueOff")]
    [InlineData("0 ms", "1 StoppingToOff; 3 TorqueOff; 3 SBC on")]
    public void The_brake_takes_hold_before_torque_goes(string apply, string happens)
    {
        Assert.Equal(happens, string.Join("; ", Story.Of($$""" "SS1": { "request": "ask", "variant": "t", "time": "2 ms" }, "SBC": { "apply": "{{apply}}" } """, "", "v: 9 9 9 9 9 9 9; ask: 0 1 1 1 1 1 1")));
        Assert.Equal("1 TorqueOff; 1 SBC on", string.Join("; ", Story.Of($$""" "STO": { "request": "ask" }, "SBC": { "apply": "{{apply}}" } """, "", "v: 9 9 9 9 9 9 9; ask: 0 1 1 1 1 1 1")));
        Assert.Equal("1 StoppingToHold; 3 Holding", string.Join("; ", Story.Of($$""" "SS2": { "request": "ask", "variant": "t", "time": "2 ms" }, "SBC": { "apply": "{{apply}}" } """ + Hold, "", "p: 0 0 0 0 0 0 0; v: 9 9 9 9 9 9 9; ask: 0 1 1 1 1 1 1")));
    }

    // The stop has ended where the brake is commanded: its time limit is met, even if the brake takes longer. A trip to STO meanwhile takes over at once and does not command it again.
    [Theory]
    [InlineData("v: 9 9 0 0 0 0 0; ask: 0 1 1 1 1 1 1", "1 StoppingToOff; 2 SBC on; 5 TorqueOff")]
    [InlineData("v: 9 9 0 200 0 0 0; ask: 0 1 1 1 1 1 1", "1 StoppingToOff; 2 SBC on; 3 m upper; 3 TorqueOff")]
    public void Waiting_for_the_brake_is_no_longer_the_stop(string recording, string happens) =>
        Assert.Equal(happens, string.Join("; ", Story.Of(""" "SS1": { "request": "ask", "variant": "r", "deceleration": "1 m/s²", "tolerance": "9 mm/s", "timeLimit": "1 ms" }, "SBC": { "apply": "3 ms" } """,
            """ "function": "SLS", "limit": "100 mm/s", "reaction": "stop 0" """, recording)));

    // "Optional check, reaction none: |p - p_c| vs window while the brake is commanded, p_c = p at the first cycle `apply` or more after the command": 1 ms + 2 ms.
    [Theory]
    [InlineData("0 9 5 7 7.5 6.5 7", "")]
    [InlineData("0 9 5 7 7.51 7 7", "4 SBC window")]
    [InlineData("0 9 5 7 7 7 6.49", "6 SBC window")]
    public void The_brake_may_slip_by_its_window(string positions, string violation)
    {
        var told = Story.Of(""" "STO": { "request": "ask" }, "SBC": { "apply": "2 ms", "window": "0.5 mm" } """, "", $"p: {positions}; ask: 0 1 1 1 1 1 1");
        Assert.Equal(violation.Length == 0 ? ["1 TorqueOff", "1 SBC on"] : ["1 TorqueOff", "1 SBC on", violation], told);
    }

    // "STO: torque that is still there, |q| vs residual from `grace` after TorqueOff, is reported as a trip of STO with reaction none."
    [Theory]
    [InlineData("2 ms", "9 9 9 3 -3 3", "")]
    [InlineData("2 ms", "9 9 9 3.1 0 0", "3 STO upper")]
    [InlineData("2.000001 ms", "9 9 9 9 -3.1 0", "4 STO upper")]
    [InlineData("0 ms", "9 3.1 0 0 0 0", "1 STO upper")]
    public void Torque_has_to_be_gone_after_the_grace(string grace, string forces, string violation)
    {
        var told = Story.Of($$""" "STO": { "request": "ask", "residual": "3 N", "grace": "{{grace}}" } """, "", $"q: {forces}; ask: 0 1 1 1 1 1");
        Assert.Equal(new[] { "1 TorqueOff", violation }.Where(line => line.Length > 0).Order(StringComparer.Ordinal), told.Order(StringComparer.Ordinal));
    }
}
