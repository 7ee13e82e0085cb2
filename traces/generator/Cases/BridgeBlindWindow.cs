namespace MonitorSim.Demo.Cases;

/// <summary>The gate is opened twice, each time for less than the delay, while the bridge runs fast.</summary>
internal sealed class BridgeBlindWindow : IDemoCase
{
    public string Name => "bridge-blind-window";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(21)
        .RampTo("400 mm/s", "2 m/s²").Until(0.5m)
        .Signal("gate", true).Until(0.8m)
        .Signal("gate", false).Until(1.2m)
        .Signal("gate", true).Until(1.55m)
        .Signal("gate", false).Until(2));
}
