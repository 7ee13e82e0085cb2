namespace MonitorSim.Demo.Cases;

/// <summary>The turntable turns through zero inside its window, and out of it on the far side.</summary>
internal sealed class TurntableWindow : IDemoCase
{
    public string Name => "turntable-window";

    public Recording Record() => Recording.Of("turntable", SlabSaw.Turntable(31)
        .From("352 deg").Signal("loading", true).Until(0.2m)
        .RampTo("10 deg/s", "100 deg/s²").Until(2.8m)
        .RampTo("0 deg/s", "100 deg/s²").Until(3))
        .Wrapped("turntable position", 360);
}
