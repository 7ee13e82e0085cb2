namespace MonitorSim.Traces;

/// <summary>The units that a time column can have.</summary>
internal static class TimeUnits
{
    /// <summary>What stands for date-times where a unit would stand.</summary>
    public const string Iso = "ISO 8601";

    /// <summary>What to say where a unit is not known.</summary>
    public const string WouldDo = "would do: s, ms, µs, us, ns, or ISO 8601 for date-times";

    /// <summary>The power of ten that makes nanoseconds of it; null where it is no such unit.</summary>
    public static int? PowerToNanoseconds(string unit) => unit.Trim().ToLowerInvariant() switch
    {
        "s" or "sec" or "secs" or "second" or "seconds" => 9,
        "ms" or "msec" or "millisecond" or "milliseconds" => 6,
        // The micro sign, the Greek letter, and what keyboards have.
        "\u00b5s" or "\u03bcs" or "us" or "usec" or "microsecond" or "microseconds" => 3,
        "ns" or "nsec" or "nanosecond" or "nanoseconds" => 0,
        _ => null,
    };

    /// <summary>Whether it stands for date-times.</summary>
    public static bool IsIso(string unit) => unit.Trim().Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant() is "ISO8601" or "ISO" or "ISO-8601";
}
