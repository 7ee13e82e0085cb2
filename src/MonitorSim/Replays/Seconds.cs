using System.Globalization;

namespace MonitorSim.Replays;

/// <summary>Times for people and files: integer nanoseconds as exact decimal seconds.</summary>
internal static class Seconds
{
    public static decimal Of(long nanoseconds) => nanoseconds / 1_000_000_000m;

    public static decimal? Of(long? nanoseconds) => nanoseconds / 1_000_000_000m;

    public static string Text(long nanoseconds) => Of(nanoseconds).ToString("0.#########", CultureInfo.InvariantCulture) + " s";
}
