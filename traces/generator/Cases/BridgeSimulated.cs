namespace MonitorSim.Demo.Cases;

/// <summary>The gate opens, and nobody stops the bridge: it runs on past the end of its travel.</summary>
internal sealed class BridgeSimulated : IDemoCase
{
    public string Name => "bridge-simulated";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(62)
        .RampTo("200 mm/s", "1 m/s²").Until(0.7m)
        .Signal("gate", true).Until(1.5m)
        .RampTo("0 mm/s", "1 m/s²").Until(2));
}
