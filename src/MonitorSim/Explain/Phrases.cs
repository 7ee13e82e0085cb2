using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Explain;

/// <summary>What each side of each function measures, and what states and reactions are, in plain words.</summary>
internal static class Phrases
{
    /// <summary>What a side measures.</summary>
    /// <param name="facts">The monitor.</param>
    /// <param name="side">The limit side.</param>
    /// <param name="unit">The SI unit: it tells force from torque.</param>
    public static string Measured(MonitorFacts facts, string side, string? unit) => (facts.Function, side) switch
    {
        ("SLS", "approach") => "the speed above the ramp towards the limit to come" + InBrackets(facts.RampText(side), facts.Derived(Kind.Velocity)),
        ("SLS" or "SSR", _) => "the speed" + Signed(facts) + InBrackets(facts.Derived(Kind.Velocity)),
        ("SDI", _) => Against(facts.Monitor as Sdi),
        ("SLA", "deceleration") => "the deceleration while slowing down" + InBrackets(facts.Derived(Kind.Acceleration)),
        ("SLA" or "SAR", _) => "the acceleration" + Signed(facts) + InBrackets(facts.Derived(Kind.Acceleration)),
        ("SLT", _) => Torque(unit) + Signed(facts),
        ("STR", _) => Torque(unit) + " with its sign",
        ("SLP", _) => "the position",
        ("SLI", "window") => "the distance from where the move should have ended",
        ("SLI", _) => "the length of the move since watching began",
        ("SOS", "speed") => "the speed while it should stand" + InBrackets(facts.Derived(Kind.Velocity)),
        ("SOS", _) => "the distance from where it should stand",
        ("SMT", _) => "the temperature",
        ("two channels", _) => "the difference of the two recordings",
        ("SS1" or "SS2", "timeLimit") => "the time that the stop took",
        ("SS1" or "SS2", "deceleration") => "the deceleration reached" + InBrackets(facts.Derived(Kind.Acceleration)),
        ("SS1" or "SS2", _) => "the speed above the ramp of the stop" + InBrackets(facts.RampText(side), facts.Derived(Kind.Velocity)),
        ("STO", _) => Torque(unit) + " that was left after torque off",
        ("SBC", _) => "the slip of the applied brake",
        _ => "the measure",
    };

    /// <summary>What people call the limit of a side.</summary>
    public static string Limit(string function, string side) => (function, side) switch
    {
        (_, "approach" or "ramp") or ("SDI" or "two channels", _) => "tolerance",
        (_, "window") or ("SBC", _) => "window",
        (_, "increment") => "increment",
        (_, "timeLimit") => "time limit",
        ("SS1" or "SS2", "deceleration") => "demanded deceleration",
        ("STO", _) => "residual",
        _ => "limit",
    };

    /// <summary>Whether values below the limit trip.</summary>
    public static bool IsLower(string function, string side) => side == "lower" || (side == "deceleration" && function is "SS1" or "SS2");

    /// <summary>What a state is, as what the axis does from then on.</summary>
    public static string State(AxisState state) => state switch
    {
        AxisState.Running => "runs again",
        AxisState.Holding => "holds its position under torque, watched by SOS",
        AxisState.StoppingToHold => "stops and will hold (SS2, stop category 2)",
        AxisState.StoppingToOff => "stops and will switch its torque off (SS1, stop category 1)",
        _ => "has its torque off (STO, stop category 0)",
    };

    /// <summary>What a trip demands.</summary>
    public static string Reaction(Reaction reaction) => reaction switch
    {
        Plans.Reaction.Stop0 => "demands stop 0 (STO)",
        Plans.Reaction.Stop1 => "demands stop 1 (SS1)",
        Plans.Reaction.Stop2 => "demands stop 2 (SS2)",
        _ => "is reported only",
    };

    private static string Torque(string? unit) => unit == "N" ? "the force" : "the torque";

    private static string InBrackets(params string?[] remarks)
    {
        var said = string.Join(", ", remarks.Where(remark => remark is not null));
        return said.Length == 0 ? "" : $" ({said})";
    }

    private static string Signed(MonitorFacts facts) =>
        facts.Monitor is Sls { Signed: true } or Ssr { Signed: true } or Sla { Signed: true } or Sar { Signed: true } or Slt { Signed: true } ? " with its sign" : "";

    private static string Against(Sdi? plan) => "the motion against the permitted direction"
        + (plan is null ? "" : $" ({(plan.Allow == Direction.Positive ? "positive" : "negative")}) "
            + (plan.Reference == DirectionReference.Start ? "from where watching began" : "from the furthest position reached"));
}
