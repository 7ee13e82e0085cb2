using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Gallery;

internal sealed class SpeedWithTheGateOpen : IExample
{
    public string Title => "Why did it trip when the gate was opened?";

    public string Picture => "bridge";

    public void Draw(string folder)
    {
        var plan = PlanReader.Read("traces/bridge-gate-speed/plan.json");
        var trace = PlannedTrace.Read(plan, "traces/bridge-gate-speed/trace.csv");

        ReplayPlot.Save(Replay.Run(plan, trace), trace, folder);
    }
}
