namespace MonitorSim.Demo.Cases;

/// <summary>The blade brakes harder than its nut allows.</summary>
internal sealed class BladeBrakeQuick : IDemoCase
{
    public string Name => "blade-brake-quick";

    public Recording Record() => Recording.Of("blade", SlabSaw.Blade(41)
        .RampTo("900 rpm", "600 rpm/s").Until(1.8m)
        .RampTo("0 rpm", "450 rpm/s").Until(4));
}
