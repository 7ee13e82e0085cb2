namespace MonitorSim.Demo.Cases;

/// <summary>One inching step, well within its length; afterwards the lift sags.</summary>
internal sealed class LiftInching : IDemoCase
{
    public string Name => "lift-inching";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(51)
        .Until(0.5m)
        .Signal("inch", true)
        .MoveBy("-4.6 mm", "20 mm/s", "200 mm/s²").Until(1.4m)
        .MoveBy("-0.5 mm", "2 mm/s", "20 mm/s²").Until(2.2m));
}
