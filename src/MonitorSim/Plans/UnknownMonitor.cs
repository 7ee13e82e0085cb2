using MonitorSim.Channels;
using MonitorSim.Monitors;

namespace MonitorSim.Plans;

/// <summary>Stands for a monitor whose function could not be read, so that references to its name do not count as errors too.</summary>
internal sealed record UnknownMonitor : MonitorPlan
{
    public override string Function => "?";

    internal override Measures Measure(AxisChannels axis) => throw new InvalidOperationException("a plan that could not be read is not replayed");
}
