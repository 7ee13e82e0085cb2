namespace MonitorSim.Demo.Cases;

/// <summary>The screw of the lift breaks away with a peak of torque.</summary>
internal sealed class LiftBreakaway : IDemoCase
{
    public string Name => "lift-breakaway";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(52)
        .Until(0.52m)
        .RampTo("40 mm/s", "400 mm/s²").Until(1.3m)
        .RampTo("0 mm/s", "400 mm/s²").Until(1.6m))
        .With("lift torque", "N·m", new Course((0.5m, 8), (0.508m, 21.5m), (0.532m, 21), (0.548m, 12), (1.3m, 11), (1.4m, 8)), 0.15m, 53);
}
