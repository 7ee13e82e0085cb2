using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The deceleration reached against the one that a stop demands: sign(v)·a vs -deceleration, the axis moving all the while.</summary>
internal sealed class SlowingLever(Bench bench, string axis, RampStopPlan stop, bool negative)
    : ChannelLever(bench, axis, "deceleration", Kind.Acceleration, -stop.Deceleration!.Exact, upper: true, magnitude: false, negative)
{
    // After its time limit the stop compares nothing any more.
    public override int Room => stop.TimeLimit is null ? int.MaxValue : StopEnd.CyclesAllowed(Bench, stop) + 1 - Bench.Clock.Cycles(stop.Delay);

    public override void Prepare(Script script, int cycles)
    {
        // At rest it slows down twice as fast as demanded.
        var plan = Bench.Plan.Axes[Axis];
        var speed = -3 * Limit * (cycles + 10) * Bench.Clock.Period / 1_000_000_000 + 2 * (plan.Standstill?.Exact ?? Fraction.Zero);
        script.Start(Axis, Kind.Velocity, IsNegative ? -speed : speed);
    }

    public override bool IsPast(Script script, int cycle, int reference)
    {
        var drive = script.Axis(Axis);
        if (drive.Value(Kind.Velocity, cycle) is not { } speed || drive.Value(Kind.Acceleration, cycle) is not { } acceleration) return false;
        return drive.Magnitude(Kind.Velocity, cycle) > (Bench.Plan.Axes[Axis].Standstill?.Exact ?? Fraction.Zero) && (speed > Fraction.Zero ? acceleration : -acceleration) > Limit;
    }

    public override void Rest(Script script) => script.Want(Axis, Kind.Acceleration, new(IsNegative ? -2 * Limit : 2 * Limit));
}
