namespace MonitorSim.Explain;

/// <summary>What each side of each function measures, in plain words.</summary>
internal static class Phrases
{
    public static string Measured(string function, string side) => (function, side) switch
    {
        ("SLS", "approach") => "the speed above the ramp towards the limit to come",
        ("SLS" or "SSR", _) => "the speed",
        ("SDI", _) => "the motion against the permitted direction",
        ("SLA", "deceleration") => "the deceleration",
        ("SLA" or "SAR", _) => "the acceleration",
        ("SLT" or "STR", _) => "the torque",
        ("SLP", _) => "the position",
        ("SLI", "window") => "the distance from where the move should have ended",
        ("SLI", _) => "the length of the move",
        ("SOS", "speed") => "the speed while it should stand",
        ("SOS", _) => "the distance from where it should stand",
        ("SMT", _) => "the temperature",
        ("two channels", _) => "the difference of the two recordings",
        ("SS1" or "SS2", "timeLimit") => "the time that the stop took",
        ("SS1" or "SS2", "deceleration") => "the deceleration reached",
        ("SS1" or "SS2", _) => "the speed above the ramp",
        ("STO", _) => "the torque that was left",
        ("SBC", _) => "the slip of the applied brake",
        _ => "the measure",
    };

    public static string State(AxisState state) => state switch
    {
        AxisState.Running => "runs again",
        AxisState.Holding => "holds its position under torque, watched by SOS",
        AxisState.StoppingToHold => "stops and will hold (SS2, stop category 2)",
        AxisState.StoppingToOff => "stops and will switch its torque off (SS1, stop category 1)",
        _ => "has its torque off (STO, stop category 0)",
    };

    public static string Reaction(Plans.Reaction reaction) => reaction switch
    {
        Plans.Reaction.Stop0 => "demands stop 0 (STO)",
        Plans.Reaction.Stop1 => "demands stop 1 (SS1)",
        Plans.Reaction.Stop2 => "demands stop 2 (SS2)",
        _ => "is reported only",
    };
}
