namespace MonitorSim.Demo.Cases;

/// <summary>The turntable stops just inside its range, but not by the hysteresis; then the bridge sets off.</summary>
internal sealed class TurntableCam : IDemoCase
{
    public string Name => "turntable-cam";

    public Recording Record() => Recording.Of("turntable", SlabSaw.Turntable(33)
        .Until(0.2m)
        .MoveBy("89.1 deg", "60 deg/s", "120 deg/s²").Until(3))
        .With("bridge", SlabSaw.Bridge(34)
            .Until(2.4m)
            .RampTo("120 mm/s", "600 mm/s²").Until(3));
}
