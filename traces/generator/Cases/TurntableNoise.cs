namespace MonitorSim.Demo.Cases;

/// <summary>A steady turn, seen through the noise of a derived acceleration.</summary>
internal sealed class TurntableNoise : IDemoCase
{
    public string Name => "turntable-noise";

    public Recording Record() => Recording.Of("turntable", SlabSaw.Turntable(32)
        .RampTo("12 deg/s", "40 deg/s²").Until(1.5m)
        .RampTo("0 deg/s", "40 deg/s²").Until(2));
}
