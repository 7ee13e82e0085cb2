namespace MonitorSim.Demo.Cases;

/// <summary>Up fast, down slower, and an emergency stop at the end. Which moment would have been the worst for it?</summary>
internal sealed class LiftShortCircuit : IDemoCase
{
    public string Name => "lift-short-circuit";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(63)
        .From("40 mm").Until(0.5m)
        .MoveBy("480 mm", "290 mm/s", "800 mm/s²").Until(3)
        .MoveBy("-300 mm", "200 mm/s", "800 mm/s²").Until(5.5m)
        .Signal("emergency stop", true).Until(6.5m));
}
