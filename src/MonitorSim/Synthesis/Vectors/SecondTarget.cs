using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What the second recording of a channel is to show.</summary>
/// <param name="Target">A value, or a distance from the first recording.</param>
/// <param name="IsSpread">Whether it is a distance.</param>
internal readonly record struct SecondTarget(Target Target, bool IsSpread)
{
    /// <summary>The value, where the first recording shows this.</summary>
    public Target From(Fraction first) => IsSpread ? Target with { Value = first + Target.Value } : Target;

    /// <summary>The same as the first one: where the grid has no such value, the next that is not larger, because the larger one counts.</summary>
    public static Target Following(Kind kind, Fraction first) =>
        kind == Kind.Position || first == Fraction.Zero ? new(first) : Target.At(first, upper: first > Fraction.Zero);
}
