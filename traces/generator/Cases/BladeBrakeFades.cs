namespace MonitorSim.Demo.Cases;

/// <summary>The brake of the blade fades half-way down.</summary>
internal sealed class BladeBrakeFades : IDemoCase
{
    public string Name => "blade-brake-fades";

    public Recording Record() => Recording.Of("blade", SlabSaw.Blade(42)
        .RampTo("900 rpm", "1800 rpm/s").Until(0.8m)
        .Signal("stop", true).Until(0.85m)
        .RampTo("500 rpm", "400 rpm/s").RampTo("0 rpm", "200 rpm/s").Until(4.5m));
}
