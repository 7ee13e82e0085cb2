using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Gallery;

internal sealed class SimulatedStop : IExample
{
    public string Title => "What would the machine have done after the trip?";

    public string Picture => "bridge";

    public void Draw(string folder)
    {
        var plan = PlanReader.Read("traces/bridge-simulated/plan.json");
        var trace = PlannedTrace.Read(plan, "traces/bridge-simulated/trace.csv");

        ReplayPlot.Save(Replay.Run(plan, trace), trace, folder);
    }
}
