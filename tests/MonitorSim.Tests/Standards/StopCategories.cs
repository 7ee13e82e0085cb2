namespace MonitorSim.Tests.Standards;

/// <summary>Stop categories of IEC 60204-1:2016, clause 9.2.2 (from memory, in our own words), as reactions to a trip and as stops on demand; STO, SS1 and SS2
/// of IEC 61800-5-2 are their counterparts.</summary>
internal static class StopCategories
{
    private const string Limit = """ "function": "SLS", "limit": "50 mm/s", "reaction": """;
    private const string Stops = """ "SS1": { "variant": "r", "deceleration": "20 m/s²", "tolerance": "0 mm/s" }, "SS2": { "variant": "r", "deceleration": "20 m/s²", "tolerance": "0 mm/s" }, "SOS": { "window": "1 mm" } """;
    private const string Ramp = """
        p:  0  0  0  0  0 0 0
        v: 50 60 40 20 0 0 0
        """;

    public static readonly Definition[] All =
    [
        new("category 0", "stopping by immediate removal of power to the actuators: an uncontrolled stop", Stops, Limit + "\"stop 0\"", Ramp, "1 m upper", "1 TorqueOff"),
        new("category 1", "a controlled stop with power available to achieve it, then removal of power when it is achieved", Stops, Limit + "\"stop 1\"", Ramp, "1 m upper", "1 StoppingToOff", "4 TorqueOff"),
        new("category 2", "a controlled stop with power left available", Stops, Limit + "\"stop 2\"", Ramp, "1 m upper", "1 StoppingToHold", "4 Holding"),
        new("category 0 overrides 1", "the stop of lower category number has priority over one under way",
            """ "STO": { "request": "cut" }, "SS1": { "request": "ask", "variant": "t", "time": "9 ms" } """, "", """
            v:   50 50 50 50
            ask:  0  1  1  1
            cut:  0  0  1  1
            """, "1 StoppingToOff", "2 TorqueOff"),
        new("category 1 overrides 2", "the stop of lower category number has priority over one under way",
            """ "SS1": { "request": "cut", "variant": "t", "time": "1 ms" }, "SS2": { "request": "ask", "variant": "t", "time": "9 ms" }, "SOS": { "window": "1 mm" } """, "", """
            p:    0  0  0  0
            v:   50 50 50 50
            ask:  0  1  1  1
            cut:  0  0  1  1
            """, "1 StoppingToHold", "2 StoppingToOff", "3 TorqueOff"),
    ];
}
