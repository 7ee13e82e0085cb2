using MonitorSim.Synthesis;

namespace MonitorSim.Demo.Cases;

/// <summary>A long cut warms the motor of the blade; recorded ten times a second, for heat is slow.</summary>
internal sealed class BladeMotorWarm : IDemoCase
{
    public string Name => "blade-motor-warm";

    public Recording Record() => Recording.Of("blade", Profile.At("10 Hz").WrittenIn("rev", "rpm")
        .Resolution("0.001 rev").Resolution("0.1 rpm").Noise("0.5 rpm", 45)
        .RampTo("1450 rpm", "725 rpm/s").Until(90))
        .With("winding temperature", "°C", new Course((0, 96), (50, 117.6m), (60, 118.4m), (90, 107.5m)), 0.1m, 46, decimals: 1);
}
