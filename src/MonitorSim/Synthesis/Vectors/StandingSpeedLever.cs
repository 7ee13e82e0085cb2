using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The speed of SOS beside its window.</summary>
internal sealed class StandingSpeedLever(Bench bench, string axis, Fraction window, Fraction speed, bool negative, int filter)
    : ChannelLever(bench, axis, "speed", Kind.Velocity, speed, upper: true, magnitude: true, negative)
{
    // The longest of the family's vectors moves for about so many cycles.
    private int Moving => filter == 0 ? 3 : 3 * filter + 4;

    public override string? Unreachable => Bench.Plan.Axes[Axis].Channels.Velocity?.Column is null && Moving * Limit * Bench.Clock.Period / 1_000_000_000 > window
        ? "moving that fast for as long as it takes leaves the window: that side trips first" : null;
}
