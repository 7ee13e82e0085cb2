namespace MonitorSim.Demo.Cases;

/// <summary>The saw head sets down on a splinter of stone: the screw carries no more weight.</summary>
internal sealed class LiftSlack : IDemoCase
{
    public string Name => "lift-slack";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(54)
        .RampTo("-30 mm/s", "300 mm/s²").Until(1.6m)
        .RampTo("0 mm/s", "300 mm/s²").Until(2))
        .With("lift torque", "N·m", new Course((0, 8), (0.1m, 6.5m), (0.9m, 6.5m), (1, 1.5m)), 0.15m, 55);
}
