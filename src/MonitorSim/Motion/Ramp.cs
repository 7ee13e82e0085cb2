using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>The ramp that a drive follows in a stop.</summary>
internal static class Ramp
{
    /// <summary>The ramp of a stop from the moment at which the drive acts.</summary>
    /// <remarks>Variant r: the ramp as demanded begins <c>delay</c> after the stop did, or when the drive acts, if that is later. Variant d: at once with the
    /// deceleration demanded. Variant t states none: the slowest that the time allows, straight to standstill at its end.</remarks>
    /// <param name="program">The stop.</param>
    /// <param name="began">When it was commanded, s.</param>
    /// <param name="state">Where the drive acts.</param>
    public static Drive Of(StopProgram program, double began, in MotionState state)
    {
        if (state.Velocity == 0) return Drive.Hold;
        if (program.Variant != StopVariant.Time)
            return new Drive.Ramp(program.Variant == StopVariant.Ramp ? Math.Max(state.Time, began + program.Delay) : state.Time, state.Velocity, program.Deceleration);
        var left = began + program.Time - state.Time;
        return left > 0 ? new Drive.Ramp(state.Time, state.Velocity, Math.Abs(state.Velocity) / left) : Drive.Hold;
    }
}
