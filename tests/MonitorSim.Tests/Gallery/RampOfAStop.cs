using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Gallery;

internal sealed class RampOfAStop : IExample
{
    public string Title => "Did the stop keep to its ramp?";

    public string Picture => "bridge";

    public void Draw(string folder)
    {
        var plan = PlanReader.Read("traces/bridge-stop-bad/plan.json");
        var trace = PlannedTrace.Read(plan, "traces/bridge-stop-bad/trace.csv");

        ReplayPlot.Save(Replay.Run(plan, trace), trace, folder);
    }
}
