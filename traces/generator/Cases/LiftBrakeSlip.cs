namespace MonitorSim.Demo.Cases;

/// <summary>The holding brake slips under the weight.</summary>
internal sealed class LiftBrakeSlip : IDemoCase
{
    public string Name => "lift-brake-slip";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(58)
        .Until(0.5m)
        .Signal("emergency stop", true).Until(0.6m)
        .MoveBy("-1.4 mm", "4 mm/s", "40 mm/s²").Until(1.6m));
}
