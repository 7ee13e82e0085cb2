namespace MonitorSim.Demo.Cases;

/// <summary>The same stop with a worn drive that gives up half-way.</summary>
internal sealed class BridgeStopBad : IDemoCase
{
    public string Name => "bridge-stop-bad";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(14)
        .RampTo("210 mm/s", "2.1 m/s²").Until(0.5m)
        .Signal("stop", true).Until(0.53m)
        .RampTo("138.6 mm/s", "420 mm/s²").RampTo("0 mm/s", "132 mm/s²").Until(1.9m)
        .Signal("stop", false).Until(2));
}
