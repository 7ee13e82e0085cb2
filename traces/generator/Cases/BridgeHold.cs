namespace MonitorSim.Demo.Cases;

/// <summary>The bridge stops, holds, and is pushed out of its place.</summary>
internal sealed class BridgeHold : IDemoCase
{
    public string Name => "bridge-hold";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(24)
        .RampTo("150 mm/s", "1.5 m/s²").Until(0.4m)
        .Signal("hold", true).Until(0.43m)
        .RampTo("0 mm/s", "500 mm/s²").Until(1.6m)
        .MoveBy("0.35 mm", "3 mm/s", "50 mm/s²").Until(2.2m));
}
