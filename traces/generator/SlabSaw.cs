using System.Globalization;
using MonitorSim.Synthesis;

namespace MonitorSim.Demo;

/// <summary>How the axes of the slab saw are recorded: 500 samples a second, in the units of the workshop, with the noise of a common encoder.
/// All numbers are invented.</summary>
internal static class SlabSaw
{
    public const string Rate = "500 Hz";

    /// <summary>The bridge carries the saw head across the table.</summary>
    public static Profile Bridge(int seed) => Linear(seed);

    /// <summary>The lift sets the saw head down, against gravity.</summary>
    public static Profile Lift(int seed) => Linear(seed);

    /// <summary>The blade.</summary>
    public static Profile Blade(int seed) => Profile.At(Rate).WrittenIn("rev", "rpm")
        .Resolution("0.001 rev").Resolution("0.1 rpm").Noise("0.3 rpm", seed);

    /// <summary>The turntable carries the slab.</summary>
    public static Profile Turntable(int seed) => Profile.At(Rate).WrittenIn("deg", "deg/s")
        .Resolution("0.001 deg").Resolution("0.01 deg/s").Noise("0.05 deg/s", seed);

    /// <summary>Goes on as it is until a time from the recording's begin.</summary>
    /// <param name="profile">The profile so far.</param>
    /// <param name="seconds">s; not before its present end.</param>
    public static Profile Until(this Profile profile, decimal seconds) => profile.Hold(string.Create(CultureInfo.InvariantCulture, $"{seconds - profile.Duration} s"));

    private static Profile Linear(int seed) => Profile.At(Rate).WrittenIn("mm", "mm/s")
        .Resolution("0.001 mm").Resolution("0.01 mm/s").Noise("0.15 mm/s", seed);
}
