namespace MonitorSim.Demo.Cases;

/// <summary>The gate opens; the bridge goes on at production speed for a moment too long.</summary>
internal sealed class BridgeGateSpeed : IDemoCase
{
    public string Name => "bridge-gate-speed";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(11)
        .RampTo("120 mm/s", "1200 mm/s²").Until(0.5m)
        .Signal("gate", true).Until(0.9m)
        .RampTo("30 mm/s", "500 mm/s²").Until(2));
}
