namespace MonitorSim.Demo.Cases;

/// <summary>The turntable is pushed back by hand against its direction lock.</summary>
internal sealed class TurntableDirection : IDemoCase
{
    public string Name => "turntable-direction";

    public Recording Record() => Recording.Of("turntable", SlabSaw.Turntable(12)
        .RampTo("12 deg/s", "120 deg/s²").Until(0.2m)
        .Signal("locked", true).Until(0.8m)
        .RampTo("-12 deg/s", "120 deg/s²").Until(1.4m)
        .RampTo("0 deg/s", "120 deg/s²").Until(2));
}
