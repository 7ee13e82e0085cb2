using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Gallery;

internal sealed class FilterAgainstLimit : IExample
{
    public string Title => "Which filter and which limit, and what does the hazard allow?";

    public string Picture => "bridge-set-up_speed-upper";

    public void Draw(string folder)
    {
        var plan = PlanReader.Read("traces/bridge-gate-speed/plan.json");
        var trace = PlannedTrace.Read(plan, "traces/bridge-gate-speed/trace.csv");
        var tuned = Tune.Run(plan, [trace]);

        // The hazard: it stops with 1.5 m/s² at worst, and may not go further than 10 mm.
        var hazard = new Hazard { Unit = "m/s", Stopping = new ConstantDeceleration(1.5), Overrun = 0.010 };
        TunePlot.Save(Rooms.Of(tuned, new Need(), hazard), folder);
    }
}
