namespace MonitorSim.Demo.Cases;

/// <summary>The real drive watched the same limit and reported its own trip.</summary>
internal sealed class BridgeDriveFault : IDemoCase
{
    public string Name => "bridge-drive-fault";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(28)
        .RampTo("30 mm/s", "300 mm/s²").Signal("gate", true).Until(0.8m)
        .RampTo("48 mm/s", "200 mm/s²").Until(0.892m)
        .Signal("drive fault", true).RampTo("0 mm/s", "500 mm/s²").Until(1.6m));
}
