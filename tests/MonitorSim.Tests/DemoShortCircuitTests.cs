using MonitorSim.Motion.Envelopes;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests;

/// <summary>Of the lift that only its motor's short circuit stops, what <c>stop</c> says, as the docs tell it.</summary>
public sealed class DemoShortCircuitTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "traces", "lift-short-circuit");

    /// <summary>Up it is faster, but the weight helps; down it is slower, with little of the short circuit left. A constant force as strong as its best puts the worst moment upwards.</summary>
    [Fact]
    public void TheWorstMomentIsNotWhereAConstantForcePutsIt()
    {
        var plan = PlanReader.Read(Path.Combine(Folder, "plan.json"));
        var constant = new ShortCircuitPlan { Table = [new() { Speed = "0 mm/s", Torque = "12.06 kN" }, new() { Speed = "400 mm/s", Torque = "12.06 kN" }] };
        var lift = plan.Axes["lift"];
        var simpler = plan with { Axes = new Dictionary<string, AxisPlan> { ["lift"] = lift with { Plant = lift.Plant! with { ShortCircuit = constant } } } };
        var (found, misled) = (Worst(plan), Worst(simpler));
        Assert.Equal(-0.2, found.Point.Velocity, 2e-3);
        Assert.Equal(0.29, misled.Point.Velocity, 2e-3);
        Assert.Equal((0.01051, 0.00761), (Math.Round(found.Value, 5), Math.Round(misled.Value, 5)));
    }

    private static WorstFigure Worst(Plan plan) => Envelope.Of(new()
    {
        Plan = plan, Axis = "lift", Demand = Reaction.Stop0, Trace = PlannedTrace.Read(plan, Path.Combine(Folder, "trace.csv")),
    }).Worst[0];
}
