using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Gallery;

internal sealed class RunawayOfALift : IExample
{
    public string Title => "How far does the lift drop if its drive runs away at the worst moment?";

    public string Picture => "lift-stop";

    public void Draw(string folder)
    {
        var plan = PlanReader.Read("traces/lift-runaway/plan.json");
        var trace = PlannedTrace.Read(plan, "traces/lift-runaway/trace.csv");
        var question = new EnvelopeQuestion { Plan = plan, Trace = trace, Axis = "lift", Faults = [new RunawayFault()], Horizon = 10 };

        var worst = Envelope.Of(question).Worst[0];
        StopPlot.Save(plan, "lift", Envelope.Motion(question, worst.Point), "a runaway at the worst moment", folder);
    }
}
