using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Gallery;

internal sealed class SpeedLevels : IExample
{
    public string Title => "Which of two speed levels counted when?";

    public string Picture => "bridge";

    public void Draw(string folder)
    {
        var plan = PlanReader.Read("traces/bridge-approach/plan.json");
        var trace = PlannedTrace.Read(plan, "traces/bridge-approach/trace.csv");

        ReplayPlot.Save(Replay.Run(plan, trace), trace, folder);
    }
}
