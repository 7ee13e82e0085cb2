using MonitorSim.Plans;

namespace MonitorSim.Stops;

/// <summary>Why an axis is not running: a demand that has not ended.</summary>
/// <param name="Source">Where it came from, as axis.monitor or axis.stop.</param>
/// <param name="Demand">The state that it asks for.</param>
/// <param name="IsRequest">A request of a stop; otherwise a trip.</param>
internal sealed record Cause(string Source, AxisState Demand, bool IsRequest)
{
    public static AxisState? StateOf(Reaction reaction) => reaction switch
    {
        Reaction.Stop0 => AxisState.TorqueOff,
        Reaction.Stop1 => AxisState.StoppingToOff,
        Reaction.Stop2 => AxisState.StoppingToHold,
        _ => null,
    };
}
