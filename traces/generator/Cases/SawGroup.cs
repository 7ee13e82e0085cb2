namespace MonitorSim.Demo.Cases;

/// <summary>The bridge trips; the blade of the same group stops with it; the first reset comes too early.</summary>
internal sealed class SawGroup : IDemoCase
{
    public string Name => "saw-group";

    public Recording Record() => Recording.Of("bridge", SlabSaw.Bridge(61)
        .RampTo("60 mm/s", "600 mm/s²").Until(0.4m)
        .Signal("gate", true).Until(0.62m)
        .RampTo("0 mm/s", "500 mm/s²").Until(1)
        .Signal("reset", true).Until(1.1m)
        .Signal("reset", false).Until(2.2m)
        .Signal("gate", false).Until(2.4m)
        .Signal("reset", true).Until(2.5m)
        .Signal("reset", false).Until(3))
        .With("blade", SlabSaw.Blade(62)
            .RampTo("600 rpm", "2000 rpm/s").Until(0.64m)
            .RampTo("0 rpm", "500 rpm/s").Until(3));
}
