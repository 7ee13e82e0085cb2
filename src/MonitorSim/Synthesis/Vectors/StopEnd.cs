using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>When a stop ends.</summary>
internal static class StopEnd
{
    /// <summary>Cycles from the first one of a stop to the one at which it ends, where the axis stands from the beginning.</summary>
    public static int Cycles(Bench bench, RampStopPlan stop) => bench.Clock.Cycles(stop.Variant == StopVariant.Time ? stop.Time : stop.Settle);

    /// <summary>Cycles from the first one of a stop to the last one at which it may end without a trip of its time limit.</summary>
    public static int CyclesAllowed(Bench bench, RampStopPlan stop) => stop.TimeLimit is not { } limit ? int.MaxValue
        : (int)(limit.Nanoseconds / bench.Clock.Period) + bench.Clock.Cycles(stop.Variant == StopVariant.Deceleration ? stop.Filter : null);
}
