namespace MonitorSim.Demo.Cases;

/// <summary>A cable that is worn through in the drag chain: 10 ms without values.</summary>
internal sealed class BridgeCable : IDemoCase
{
    public string Name => "bridge-cable";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(29)
        .RampTo("25 mm/s", "250 mm/s²").Signal("gate", true).Until(0.9m)
        .DropOut("10 ms").Until(1.5m));
}
