namespace MonitorSim.Demo.Cases;

/// <summary>The pinion of the second encoder skips on its rack.</summary>
internal sealed class BridgeTwoEncoders : IDemoCase
{
    public string Name => "bridge-two-encoders";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(25)
        .RampTo("100 mm/s", "1 m/s²").Until(1.8m)
        .RampTo("0 mm/s", "1 m/s²").Until(2))
        .Beside("bridge position", "rack position", new Course((0, 0.02m), (1.1m, 0.06m), (1.14m, 0.46m)), 0.01m, 26);
}
