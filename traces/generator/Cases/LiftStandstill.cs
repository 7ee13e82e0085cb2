namespace MonitorSim.Demo.Cases;

/// <summary>The lift sinks slowly while it should stand.</summary>
internal sealed class LiftStandstill : IDemoCase
{
    public string Name => "lift-standstill";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(13)
        .RampTo("40 mm/s", "400 mm/s²").Until(0.6m)
        .RampTo("0 mm/s", "200 mm/s²").Until(1)
        .Signal("loading", true).Until(1.6m)
        .RampTo("-0.6 mm/s", "6 mm/s²").Until(3));
}
