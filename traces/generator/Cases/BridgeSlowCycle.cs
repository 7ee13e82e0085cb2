namespace MonitorSim.Demo.Cases;

/// <summary>An edge switch that closes for 6 ms, and a jerk that lasts 30 ms.</summary>
internal sealed class BridgeSlowCycle : IDemoCase
{
    public string Name => "bridge-slow-cycle";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(27)
        .RampTo("30 mm/s", "300 mm/s²").Until(0.506m)
        .Signal("edge switch", true).Until(0.512m)
        .Signal("edge switch", false).Until(1)
        .RampTo("38 mm/s", "2 m/s²").Until(1.03m)
        .RampTo("30 mm/s", "2 m/s²").Until(2));
}
