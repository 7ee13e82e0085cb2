namespace MonitorSim.Tests.Standards;

/// <summary>The stopping functions of IEC 61800-5-2:2016, clause 4.2 (definitions from memory, in our own words), and of the brake.</summary>
internal static class StopDefinitions
{
    private const string Hold = """ "SOS": { "window": "0.2 mm" } """;
    private const string SS1t = """ "SS1": { "request": "ask", "variant": "t", "time": "3 ms" } """;
    private const string SS2t = """ "SS2": { "request": "ask", "variant": "t", "time": "3 ms" }, """ + Hold;
    // 10 mm/s a millisecond from the first one on.
    private const string SS1r = """ "SS1": { "request": "ask", "variant": "r", "deceleration": "10 m/s²", "delay": "1 ms", "tolerance": "2 mm/s" } """;
    private const string SS2r = """ "SS2": { "request": "ask", "variant": "r", "deceleration": "10 m/s²", "delay": "1 ms", "tolerance": "2 mm/s" }, """ + Hold;
    private const string SS1d = """ "SS1": { "request": "ask", "variant": "d", "deceleration": "8 m/s²", "delay": "1 ms" } """;
    private const string SS2d = """ "SS2": { "request": "ask", "variant": "d", "deceleration": "8 m/s²", "delay": "1 ms" }, """ + Hold;

    public static readonly Definition[] All =
    [
        new("STO at once, moving or not", "power that can cause motion is not applied; the motor coasts",
            """ "STO": { "request": "ask" } """, "", """
            v:   40 40 40 40 30 20
            ask:  0  0  1  1  1  1
            """, "2 TorqueOff"),
        new("STO needs a deliberate restart", "unexpected start-up is prevented: the end of the demand alone starts nothing",
            """ "STO": { "request": "ask" } """, "", """
            v:     0 0 0 0 0 0 0 0
            ask:   0 1 1 0 0 0 0 0
            reset: 0 1 0 0 0 1 0 0
            """, "1 TorqueOff", "6 Running"),
        new("STO that leaves torque", "the motor is without torque; what is left is told",
            """ "STO": { "request": "ask", "residual": "0.5 N", "grace": "1 ms" } """, "", """
            q:   9 9 9 0.5 -0.6 0
            ask: 0 1 1 1    1   1
            """, "1 TorqueOff", "2 STO upper"),
        new("STO within its residual", "the motor is without torque; what is left is told",
            """ "STO": { "request": "ask", "residual": "0.5 N", "grace": "1 ms" } """, "", """
            q:   9 9 0.5 -0.5 0
            ask: 0 1 1    1   1
            """, "1 TorqueOff"),

        new("SS1-t ends by time", "the motor is made to slow down, and STO follows after a set time, however fast it still is", SS1t, "", """
            v:   40 40 40 40 40 40
            ask:  0  1  1  1  1  1
            """, "1 StoppingToOff", "4 TorqueOff"),
        new("SS1-r along its ramp", "the slowing down is watched, and STO follows where the speed is below a set limit", SS1r, "", """
            v:   40 40 42 32 22 12 1 0
            ask:  0  1  1  1  1  1 1 1
            """, "1 StoppingToOff", "6 TorqueOff"),
        new("SS1-r above its ramp", "a violation of the watched slowing down brings STO at once", SS1r, "", """
            v:   40 40 40 32.1 22 12 1 0
            ask:  0  1  1  1    1  1 1 1
            """, "1 StoppingToOff", "3 SS1 ramp", "3 TorqueOff"),
        new("SS1-d fast enough", "the rate of slowing down is watched, and STO follows where the speed is below a set limit", SS1d, "", """
            v:   40 40 32    24    16 8 1 0
            a:    0  0 -8000 -9000 -8000 -8000 0 0
            ask:  0  1  1     1    1 1 1 1
            """, "1 StoppingToOff", "6 TorqueOff"),
        new("SS1-d too slow", "a violation of the watched rate brings STO at once", SS1d, "", """
            v:   -40 -40 -32  -24    -16    -8   -1 0
            a:     0   0 8000  7999.9 8000 8000   0 0
            ask:   0   1    1   1      1    1    1 1
            """, "1 StoppingToOff", "3 SS1 deceleration", "3 TorqueOff"),

        new("SS2-t ends by time in SOS", "the motor is made to slow down, and SOS follows after a set time", SS2t, "", """
            p:    0  0  0  0  5  5.2 4.8
            v:   40 40 40 40 40  0   0
            ask:  0  1  1  1  1  1   1
            """, "1 StoppingToHold", "4 Holding"),
        new("SS2-t, then moved away", "in SOS a deviation from where it stopped brings STO", SS2t, "", """
            p:    0  0  0  0  5  5.2 4.79
            v:   40 40 40 40 40  0   0
            ask:  0  1  1  1  1  1   1
            """, "1 StoppingToHold", "4 Holding", "6 SOS window", "6 TorqueOff"),
        new("SS2-r along its ramp", "the slowing down is watched, and SOS follows where the speed is below a set limit", SS2r, "", """
            p:    0  0  0  0  0  0 3 3.2
            v:   40 40 42 32 22 12 1 0
            ask:  0  1  1  1  1  1 1 1
            """, "1 StoppingToHold", "6 Holding"),
        new("SS2-r above its ramp", "a violation of the watched slowing down brings STO at once", SS2r, "", """
            p:    0  0  0    0  0  0
            v:   40 40 42.1 32 22 12
            ask:  0  1  1    1  1  1
            """, "1 StoppingToHold", "2 SS2 ramp", "2 TorqueOff"),
        new("SS2-d fast enough", "the rate of slowing down is watched, and SOS follows where the speed is below a set limit", SS2d, "", """
            p:    0  0  0     0     0 0 3 3
            v:   40 40 32    24    16 8 1 0
            a:    0  0 -8000 -8000 -8000 -8000 0 0
            ask:  0  1  1     1    1 1 1 1
            """, "1 StoppingToHold", "6 Holding"),
        new("SS2-d too slow", "a violation of the watched rate brings STO at once", SS2d, "", """
            p:    0  0  0      0  0
            v:   40 40 32     24 16
            a:    0  0 -7999  -8000 -8000
            ask:  0  1  1      1  1
            """, "1 StoppingToHold", "2 SS2 deceleration", "2 TorqueOff"),

        new("SOS holds under power", "the motor does not leave the stopped position by more than a set amount, and resists forces", """ "SOS": { "request": "ask", "window": "0.2 mm" } """, "", """
            p:   0 10.5 10.3 10.7 10.5 99
            ask: 0    1    1    1    0  0
            """, "1 Holding", "4 Running"),
        new("SOS left", "the motor does not leave the stopped position by more than a set amount", """ "SOS": { "request": "ask", "window": "0.2 mm" } """, "", """
            p:   0 10.5 10.3 10.71 10.5
            ask: 0    1    1    1     1
            """, "1 Holding", "3 SOS window", "3 TorqueOff"),

        new("SBC with SS1", "a safe output commands a brake: before torque goes, so that nothing drops", SS1t + """, "SBC": { "apply": "2 ms" } """, "", """
            v:   40 40 30 20 10 0 0 0
            ask:  0  1  1  1  1 1 1 1
            """, "1 StoppingToOff", "4 SBC on", "6 TorqueOff"),
        new("SBC with STO", "a safe output commands a brake: at once where torque goes at once", """ "STO": { "request": "ask" }, "SBC": { "apply": "2 ms", "window": "0.5 mm" } """, "", """
            p:     0 9 7 5 5.5 5.51 0 0
            ask:   0 1 1 0   0    0 0 0
            reset: 0 0 0 0   0    1 0 0
            """, "1 TorqueOff", "1 SBC on", "5 SBC window", "6 Running", "6 SBC off"),
    ];
}
