using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>How an axis stops, as drive and brake carry it out. SI.</summary>
public sealed record StopProgram
{
    /// <summary>Stop 0 (torque off), stop 1 (ramp, then torque off), stop 2 (ramp, then hold); none: nothing stops it.</summary>
    public Reaction Reaction { get; init; }
    /// <summary>From a command to the moment drive and brake act on it, s, >= 0.</summary>
    public double ReactionDelay { get; init; }
    /// <summary>From a limit being passed to the cycle that knows it: one cycle and the age of its input, s, >= 0.</summary>
    public double Response { get; init; }
    /// <summary>At or below this speed the axis counts as standing, m/s or rad/s, >= 0.</summary>
    public double Standstill { get; init; }
    /// <summary>How the ramp is watched.</summary>
    public StopVariant Variant { get; init; }
    /// <summary>The ramp, m/s² or rad/s²; for a stop by time (variant t) it follows from the time.</summary>
    public double Deceleration { get; init; }
    /// <summary>When a stop by time ends, s.</summary>
    public double Time { get; init; }
    /// <summary>From the beginning of the stop to that of the ramp (variant r) or of the check (d), s.</summary>
    public double Delay { get; init; }
    /// <summary>How far the speed may lie above the ramp (variant r); null: not watched.</summary>
    public double? Tolerance { get; init; }
    /// <summary>How long too little deceleration may last (variant d), s.</summary>
    public double Filter { get; init; }
    /// <summary>How long standstill must last, s.</summary>
    public double Settle { get; init; }
    /// <summary>The longest that the ramp may take, s; null: any time.</summary>
    public double? TimeLimit { get; init; }
    /// <summary>How far holding may give way; null: not watched.</summary>
    public double? HoldingWindow { get; init; }
    /// <summary>Whether the plan commands the brake (SBC); otherwise a brake closes with the torque off.</summary>
    public bool CommandsBrake { get; init; }
    /// <summary>From the brake's command at the end of a ramp to torque off, s.</summary>
    public double BrakeWait { get; init; }

    /// <summary>The stop that a reaction demands of an axis.</summary>
    /// <param name="plan">The plan, for its times.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="reaction">Which stop.</param>
    /// <param name="cycle">The cycle of the monitors where the plan takes that of the recording, s.</param>
    /// <exception cref="InputException">The axis does not define that stop.</exception>
    public static StopProgram Of(Plan plan, AxisPlan axis, Reaction reaction, double cycle = 0)
    {
        var ramp = reaction switch { Reaction.Stop1 => axis.Stops.Ss1, Reaction.Stop2 => axis.Stops.Ss2, _ => null };
        if (ramp is null && reaction is Reaction.Stop1 or Reaction.Stop2)
        {
            var name = reaction == Reaction.Stop1 ? "SS1" : "SS2";
            throw new InputException(new Problem($"stops.{name}", $"the axis does not define {name}", $"add it, such as \"{name}\": {{ \"variant\": \"t\", \"time\": \"300 ms\" }}"));
        }

        return new()
        {
            Reaction = reaction,
            ReactionDelay = plan.ReactionDelay?.Si ?? 0,
            Response = (plan.Cycle?.Si ?? cycle) + (plan.InputDelay?.Si ?? 0),
            Standstill = axis.Standstill?.Si ?? 0,
            Variant = ramp?.Variant ?? StopVariant.Time,
            Deceleration = ramp?.Deceleration?.Si ?? 0,
            Time = ramp?.Time?.Si ?? 0,
            Delay = ramp?.Delay?.Si ?? 0,
            Tolerance = ramp?.Tolerance?.Si,
            Filter = ramp?.Filter?.Si ?? 0,
            Settle = ramp?.Settle?.Si ?? 0,
            TimeLimit = ramp?.TimeLimit?.Si,
            HoldingWindow = axis.Stops.Sos?.Window?.Si,
            CommandsBrake = axis.Stops.Sbc is not null,
            BrakeWait = axis.Stops.Sbc?.Apply?.Si ?? 0,
        };
    }
}
