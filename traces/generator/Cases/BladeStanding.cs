namespace MonitorSim.Demo.Cases;

/// <summary>The blade runs down slowly through the speed at which the guard may open.</summary>
internal sealed class BladeStanding : IDemoCase
{
    public string Name => "blade-standing";

    public Recording Record() => Recording.Of("blade", SlabSaw.Blade(44)
        .RampTo("60 rpm", "600 rpm/s").Until(0.3m)
        .RampTo("26 rpm", "100 rpm/s").RampTo("14 rpm", "10 rpm/s").RampTo("0 rpm", "28 rpm/s").Until(3));
}
