namespace MonitorSim.Demo.Cases;

/// <summary>The enabling switch is let go; the bridge slows down by the right ramp, but begins late.</summary>
internal sealed class BridgeApproach : IDemoCase
{
    public string Name => "bridge-approach";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(22)
        .Signal("gate", true).Signal("enabling switch", true)
        .RampTo("200 mm/s", "1 m/s²").Until(0.7m)
        .Signal("enabling switch", false).Until(0.78m)
        .RampTo("30 mm/s", "500 mm/s²").Until(2));
}
