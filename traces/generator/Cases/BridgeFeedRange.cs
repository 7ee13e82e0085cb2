namespace MonitorSim.Demo.Cases;

/// <summary>The blade binds in the cut, and the feed falls below its range.</summary>
internal sealed class BridgeFeedRange : IDemoCase
{
    public string Name => "bridge-feed-range";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(23)
        .RampTo("45 mm/s", "450 mm/s²").Until(0.5m)
        .Signal("cutting", true).Until(1.1m)
        .RampTo("12 mm/s", "300 mm/s²").Until(1.5m)
        .RampTo("45 mm/s", "300 mm/s²").Until(2));
}
