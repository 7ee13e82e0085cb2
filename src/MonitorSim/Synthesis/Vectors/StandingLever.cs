using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The window of SOS beside its limit of speed: the axis stands, as far as its speed tells.</summary>
internal sealed class StandingLever(Bench bench, string axis, Fraction window, Fraction? speed, bool negative) : TravelLever(bench, axis, "window", window, negative)
{
    public override string? Unreachable => base.Unreachable ?? (speed is { } limit && IsDerived && 2 * Window > limit * Bench.Clock.Period / 1_000_000_000
        ? "a step out of the window is faster than the speed that is allowed: that side trips first" : null);

    private bool IsDerived => Bench.Plan.Axes[Axis].Channels.Velocity?.Column is null;

    public override void Prepare(Script script, int cycles)
    {
        base.Prepare(script, cycles);
        if (speed is not null && !IsDerived) script.Start(Axis, Kind.Velocity, Fraction.Zero);
    }
}
