namespace MonitorSim.Tests.Standards;

/// <summary>The monitoring and output functions of IEC 61800-5-2:2016, clause 4.2 (definitions from memory, in our own words).</summary>
internal static class MonitoringDefinitions
{
    private const string Off = """, "reaction": "stop 0" """;

    public static readonly Definition[] All =
    [
        new("SLS", "the motor does not exceed a set speed, whichever way it turns", "", """ "function": "SLS", "limit": "33 mm/s" """ + Off, "v: 0 33 -33 33.1 0", "3 m upper", "3 TorqueOff"),
        new("SLS backwards", "the motor does not exceed a set speed, whichever way it turns", "", """ "function": "SLS", "limit": "33 mm/s" """ + Off, "v: 0 33 -33.1 0", "2 m upper", "2 TorqueOff"),
        new("SLS several", "more than one limit may be set", "", """ "function": "SLS", "levels": [ { "when": "slow", "limit": "10 mm/s" }, { "when": "always", "limit": "33 mm/s" } ] """ + Off, """
            v:    33 33 10 10.1 33
            slow:  0  0  1  1    1
            """, "3 m upper", "3 TorqueOff"),
        new("SSR too fast", "the speed stays within set limits", "", """ "function": "SSR", "lower": "10 mm/s", "upper": "33 mm/s" """ + Off, "v: 10 33 -10 -33 33.1", "4 m upper", "4 TorqueOff"),
        new("SSR too slow", "the speed stays within set limits", "", """ "function": "SSR", "lower": "10 mm/s", "upper": "33 mm/s" """ + Off, "v: 10 33 -10 -9.9 20", "3 m lower", "3 TorqueOff"),
        new("SLA", "the motor does not exceed a set acceleration and/or deceleration", "", """ "function": "SLA", "limit": "500 mm/s²" """ + Off, "a: 0 500 -500 -500.1 0", "3 m upper", "3 TorqueOff"),
        new("SLA speeding up", "limits of acceleration and deceleration may differ", "", """ "function": "SLA", "limit": "500 mm/s²", "deceleration": "900 mm/s²" """ + Off, """
            v: 1    -1    1 -1 -1
            a: 500 -500 -900 900 -500.1
            """, "4 m upper", "4 TorqueOff"),
        new("SLA slowing down", "limits of acceleration and deceleration may differ", "", """ "function": "SLA", "limit": "500 mm/s²", "deceleration": "900 mm/s²" """ + Off, """
            v: 1    -1    1 -1 -1
            a: 500 -500 -900 900 900.1
            """, "4 m deceleration", "4 TorqueOff"),
        new("SAR", "acceleration stays within set limits", "", """ "function": "SAR", "lower": "100 mm/s²", "upper": "500 mm/s²" """ + Off, "a: 100 -500 99.9 0", "2 m lower", "2 TorqueOff"),
        new("SAR too much", "acceleration stays within set limits", "", """ "function": "SAR", "lower": "100 mm/s²", "upper": "500 mm/s²" """ + Off, "a: 100 -500 -500.1 0", "2 m upper", "2 TorqueOff"),
        new("SLT", "the motor does not exceed a set torque, or force of a linear motor", "", """ "function": "SLT", "limit": "12.5 N" """ + Off, "q: 12.5 -12.5 -12.6", "2 m upper", "2 TorqueOff"),
        new("STR too much", "torque or force stays within set limits", "", """ "function": "STR", "lower": "-3 N", "upper": "12.5 N" """ + Off, "q: 12.5 -3 12.6", "2 m upper", "2 TorqueOff"),
        new("STR too little", "torque or force stays within set limits", "", """ "function": "STR", "lower": "-3 N", "upper": "12.5 N" """ + Off, "q: 12.5 -3 -3.1", "2 m lower", "2 TorqueOff"),
        new("SLP", "the position does not exceed set limits", "", """ "function": "SLP", "lower": "-20.1 mm", "upper": "300.3 mm" """ + Off, "p: -20.1 0 300.3 300.4", "3 m upper", "3 TorqueOff"),
        new("SLP below", "the position does not exceed set limits", "", """ "function": "SLP", "lower": "-20.1 mm", "upper": "300.3 mm" """ + Off, "p: -20.1 0 300.3 -20.2", "3 m lower", "3 TorqueOff"),
        new("SLI", "a move does not exceed a set increment of position, counted from its start", "", """ "function": "SLI", "request": "jog", "increment": "5 mm" """ + Off, """
            p:   90 10.3 15.3 10.3 5.3 15.4
            jog:  0  1    1    1   1   1
            """, "5 m increment", "5 TorqueOff"),
        new("SLI, each start anew", "a move does not exceed a set increment of position, counted from its start", "", """ "function": "SLI", "request": "jog", "increment": "5 mm" """ + Off, """
            p:   0 0 5 5 10 15
            jog: 0 1 1 0  1  1
            """),
        new("SDI", "the motor does not move in the unintended direction", "", """ "function": "SDI", "allow": "positive", "tolerance": "0.2 mm" """ + Off, "p: 10 12 11.8 14 13.79", "4 m upper", "4 TorqueOff"),
        new("SDI mirrored", "the motor does not move in the unintended direction", "", """ "function": "SDI", "allow": "negative", "tolerance": "0.2 mm" """ + Off, "p: 10 8 8.2 6 6.21", "4 m upper", "4 TorqueOff"),
        new("SMT", "the motor's temperature does not exceed a set upper limit", "", """ "function": "SMT", "limit": "80 °C" """ + Off, "T: 79 80 80.1", "0 m on", "2 m upper", "2 TorqueOff", "2 m off"),
        new("SCA", "a safe output tells whether the position is within a set range; nothing is stopped", "", """ "function": "SCA", "ranges": [["10 mm", "20 mm"]] """, "p: 9.9 10 20 20.1", "1 m on", "3 m off"),
        new("SSM", "a safe output tells whether the speed is below a set limit; nothing is stopped", "", """ "function": "SSM", "upper": "10 mm/s" """, "v: 30 10.1 -10 0 10.1", "2 m on", "4 m off"),
    ];
}
