using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>What watches a simulated stop, as its monitors of the same name do in a replay. A violation leads to torque off.</summary>
internal static class StopWatchers
{
    // A drive that follows its ramp to the last bit must not seem to leave it by rounding.
    private const double Rounding = 1e-12;

    /// <summary>The watchers of a ramp that begins at a state.</summary>
    public static IEnumerable<Watcher> Of(StopProgram program, MotionState began)
    {
        var name = program.Reaction == Reaction.Stop1 ? "SS1" : "SS2";
        var (v0, checkedFrom) = (Math.Abs(began.Velocity), began.Time + program.Delay);
        if (program is { Variant: StopVariant.Ramp, Tolerance: { } tolerance })
        {
            yield return Tripping(name, "ramp", state => Math.Abs(state.Velocity) is var speed && speed > program.Standstill
                ? speed - (v0 - program.Deceleration * Math.Max(0, state.Time - checkedFrom)) : double.NaN, tolerance + Rounding * v0, program);
        }

        if (program.Variant == StopVariant.Deceleration)
        {
            yield return Tripping(name, "deceleration", state => Math.Abs(state.Velocity) > program.Standstill ? Math.Sign(state.Velocity) * state.Acceleration : double.NaN,
                -program.Deceleration * (1 - Rounding), program) with { From = checkedFrom, Filter = program.Filter };
        }
    }

    /// <summary>The watcher of holding from a state on.</summary>
    public static IEnumerable<Watcher> OfHolding(StopProgram program, MotionState held)
    {
        if (program.HoldingWindow is { } window) yield return Tripping("SOS", "window", state => Math.Abs(state.Position - held.Position), window, program);
    }

    private static Watcher Tripping(string name, string side, Func<MotionState, double> measure, double limit, StopProgram program) =>
        new(name, side, measure, limit) { Response = program.Response, Reaction = Reaction.Stop0 };
}
