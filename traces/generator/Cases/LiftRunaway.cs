namespace MonitorSim.Demo.Cases;

/// <summary>A good cycle of the lift: down to the slab, up again, and a little closer by hand with the gate open. What if its drive ran away in it?</summary>
internal sealed class LiftRunaway : IDemoCase
{
    public string Name => "lift-runaway";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(61)
        .From("420 mm").Until(0.4m)
        .MoveBy("-250 mm", "180 mm/s", "800 mm/s²").Until(2.4m)
        .MoveBy("150 mm", "200 mm/s", "800 mm/s²").Until(3.6m)
        .Signal("gate", true).Until(4)
        .MoveBy("-160 mm", "40 mm/s", "200 mm/s²").Until(8.6m)
        .Signal("gate", false).Until(9));
}
