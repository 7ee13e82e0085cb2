using Fractions;
using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The speed against a limit of SLS. Where an approach is watched, the speed falls faster than its ramp while the monitor arms.</summary>
internal sealed class SlsLever(Bench bench, string axis, Fraction limit, bool signed, bool negative, Approach? approach)
    : ChannelLever(bench, axis, "upper", Kind.Velocity, limit, upper: true, magnitude: !signed, negative)
{
    // Twice the ramp's deceleration: below it whatever the grid rounds.
    private readonly Fraction _fall = approach is null ? Fraction.Zero : 2 * approach.Deceleration.Exact * bench.Clock.Period / 1_000_000_000;

    public override void ExceedUnheard(Script script, int cyclesLeft)
    {
        if (approach is null) Exceed(script);
        else script.Want(Axis, Kind.Velocity, Target.Past(IsNegative ? -Limit - cyclesLeft * _fall : Limit + cyclesLeft * _fall, !IsNegative));
    }
}
