using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>§3, "Two channels": "Upper limits of magnitudes, approach, ramps and standstill use the larger (at t_a and t_s too), lower limits the smaller, all else and
/// derived channels the first." Small letters are first recordings, capitals second ones.</summary>
public class LargerOfTwoTests
{
    private const string None = """, "reaction": "none" """;
    private const string Sls = """ "function": "SLS", "limit": "33 mm/s" """ + None;
    private const string Approach = """ "function": "SLS", "delay": "9 ms", "limit": "10 mm/s", "approach": { "deceleration": "2 m/s²", "tolerance": "1 mm/s" } """ + None;
    private const string Range = """ "function": "SAR", "lower": "10 mm/s²", "upper": "33 mm/s²" """ + None;
    private const string Quadrants = """ "function": "SLA", "limit": "100 mm/s²", "deceleration": "200 mm/s²" """ + None;

    [Theory]
    // Upper limits of magnitudes: the larger.
    [InlineData(Sls, "v: 33 33; V: -33 -33.1", "1 m upper")]
    [InlineData(Sls, "v: 33 33.1; V: 0 0", "1 m upper")]
    [InlineData(""" "function": "SLT", "limit": "33 N" """ + None, "q: 33 0; Q: -33 -33.1", "1 m upper")]
    [InlineData(""" "function": "SOS", "window": "1 mm", "speed": "3 mm/s" """ + None, "p: 0 0; v: 3 3; V: 3 -3.1", "1 m speed")]
    [InlineData(Quadrants, "v: 5 5; a: 100 0; A: -100 -100.1", "1 m upper")]
    // Which quadrant it is says the first, how much the larger.
    [InlineData(Quadrants, "v: 5 5; V: -5 -5; a: -150 -150; A: 200 200.1", "1 m deceleration")]
    // Lower limits: the smaller.
    [InlineData(Range, "a: 10 20; A: 20 -9.9", "1 m lower")]
    [InlineData(Range, "a: 20 33; A: 33 -33.1", "1 m upper")]
    // The approach: the larger, at t_a too.
    [InlineData(Approach, "v: 14 13; V: 16 15", "")]
    [InlineData(Approach, "v: 14 12; V: 16 -15.1", "1 m approach")]
    [InlineData(Approach, "v: 16 15.1; V: 14 0", "1 m approach")]
    // With a sign, or of positions: the first.
    [InlineData(""" "function": "SLS", "limit": "33 mm/s", "signed": true """ + None, "v: 33 33 33.1; V: 99 99 0", "2 m upper")]
    [InlineData(""" "function": "STR", "lower": "-3 N", "upper": "33 N" """ + None, "q: -3 33 33.1; Q: -99 99 0", "2 m upper")]
    [InlineData(""" "function": "SLP", "lower": "-3 mm", "upper": "33 mm" """ + None, "p: -3 33 33.1; P: -99 99 0", "2 m upper")]
    [InlineData(""" "function": "SDI", "allow": "positive", "tolerance": "1 mm" """ + None, "p: 0 -1 -1.1; P: 0 -99 9", "2 m upper")]
    [InlineData(""" "function": "SLI", "increment": "1 mm" """ + None, "p: 0 -1 1.1; P: 0 -99 0", "2 m increment")]
    [InlineData(""" "function": "SOS", "window": "1 mm" """ + None, "p: 0 -1 1.1; P: 0 -99 0", "2 m window")]
    [InlineData(""" "function": "SCA", "ranges": [["0 mm", "1 mm"]] """, "p: 9 1 2; P: 0 9 0", "1 m on; 2 m off")]
    // Derived channels: from the first.
    [InlineData(Sls, "p: 0 0.033 0.0661; P: 0 99 -99", "2 m upper")]
    [InlineData(Range, "v: 0 0.033 0.043 0.0529; V: 9 99 0 0", "3 m lower")]
    // An output of a range of speeds: smaller for the lower end, larger for the upper one.
    [InlineData(""" "function": "SSM", "lower": "10 mm/s", "upper": "20 mm/s" """, "v: 20 10 10; V: 9.9 20 20.1", "1 m on; 2 m off")]
    public void Monitors(string monitor, string recording, string happens) => Assert.Equal(happens, string.Join("; ", Story.Of("", monitor, recording)));

    private const string Ramp = """ "SS1": { "request": "ask", "variant": "r", "deceleration": "2 m/s²", "tolerance": "1 mm/s" } """;
    private const string Least = """ "SS1": { "request": "ask", "variant": "d", "deceleration": "5 m/s²" } """;

    [Theory]
    // The ramp, at t_s too.
    [InlineData(Ramp, "v: 14 13 0 0; V: 16 15 0 0; ask: 1 1 1 1", "0 StoppingToOff; 2 TorqueOff")]
    [InlineData(Ramp, "v: 14 12 0 0; V: 16 -15.1 0 0; ask: 1 1 1 1", "0 StoppingToOff; 1 SS1 ramp; 1 TorqueOff")]
    // Standstill (1 mm/s): both have to stand.
    [InlineData(Ramp, "v: 5 0 0 0; V: 5 1.1 -1.1 1; ask: 1 1 1 1", "0 StoppingToOff; 3 TorqueOff")]
    [InlineData(Ramp, "v: 5 1.1 1 0; V: 5 0 0 0; ask: 1 1 1 1", "0 StoppingToOff; 2 TorqueOff")]
    // The deceleration has a sign: the first; but it is compared while the larger speed moves.
    [InlineData(Least, "v: 9 9 0; V: 9 9 0; a: -5000 -5000 0; A: 0 9000 0; ask: 1 1 1", "0 StoppingToOff; 2 TorqueOff")]
    [InlineData(Least, "v: 9 1 0; V: 9 1.1 0; a: -5000 -4999 0; ask: 1 1 1", "0 StoppingToOff; 1 SS1 deceleration; 1 TorqueOff")]
    [InlineData(Least, "v: 9 1 0; V: 9 1 0; a: -5000 -4999 0; ask: 1 1 1", "0 StoppingToOff; 1 TorqueOff")]
    // Residual torque: the larger.
    [InlineData(""" "STO": { "request": "ask", "residual": "3 N" } """, "q: 3 0; Q: -3 -3.1; ask: 1 1", "0 TorqueOff; 1 STO upper")]
    public void Stops(string stops, string recording, string happens) => Assert.Equal(happens, string.Join("; ", Story.Of(stops, "", recording)));
}
