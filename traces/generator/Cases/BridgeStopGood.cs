namespace MonitorSim.Demo.Cases;

/// <summary>The bridge is asked to stop and follows its ramp.</summary>
internal sealed class BridgeStopGood : IDemoCase
{
    public string Name => "bridge-stop-good";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(14)
        .RampTo("210 mm/s", "2.1 m/s²").Until(0.5m)
        .Signal("stop", true).Until(0.53m)
        .RampTo("0 mm/s", "420 mm/s²").Until(1.9m)
        .Signal("stop", false).Until(2));
}
