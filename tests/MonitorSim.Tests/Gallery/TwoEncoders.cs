using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Gallery;

internal sealed class TwoEncoders : IExample
{
    public string Title => "Do two encoders agree?";

    public string Picture => "bridge";

    public void Draw(string folder)
    {
        var plan = PlanReader.Read("traces/bridge-two-encoders/plan.json");
        var trace = PlannedTrace.Read(plan, "traces/bridge-two-encoders/trace.csv");

        ReplayPlot.Save(Replay.Run(plan, trace), trace, folder);
    }
}
