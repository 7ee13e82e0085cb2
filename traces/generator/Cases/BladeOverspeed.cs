namespace MonitorSim.Demo.Cases;

/// <summary>The blade overshoots its cap for just as long as the filter lasts.</summary>
internal sealed class BladeOverspeed : IDemoCase
{
    public string Name => "blade-overspeed";

    public Recording Record() => Recording.Of("blade", SlabSaw.Blade(15)
        .Signal("small blade", true)
        .RampTo("1491 rpm", "1491 rpm/s")
        .RampTo("1512 rpm", "2600 rpm/s").RampTo("1491 rpm", "2600 rpm/s")
        .Until(2));
}
