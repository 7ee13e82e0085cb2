namespace MonitorSim.Demo.Cases;

/// <summary>The time of the stop is up while the blade still turns.</summary>
internal sealed class BladeOffTurning : IDemoCase
{
    public string Name => "blade-off-turning";

    public Recording Record() => Recording.Of("blade", SlabSaw.Blade(43)
        .RampTo("900 rpm", "1800 rpm/s").Until(0.8m)
        .Signal("stop", true).Until(0.85m)
        .RampTo("0 rpm", "400 rpm/s").Until(3.5m));
}
