using System.Globalization;
using System.Text.RegularExpressions;

namespace MonitorSim.Traces;

/// <summary>What a header says besides the name: its unit, and whether it is the time.</summary>
internal static partial class HeaderText
{
    // Longest first, so that "_deg_per_s" is not read as "_s".
    private static readonly (string Suffix, string Unit)[] Suffixes =
    [
        ("deg_per_s2", "deg/s²"), ("rad_per_s2", "rad/s²"), ("mm_per_s2", "mm/s²"), ("m_per_s2", "m/s²"),
        ("deg_per_s", "deg/s"), ("rad_per_s", "rad/s"), ("mm_per_s", "mm/s"), ("m_per_s", "m/s"), ("m_per_min", "m/min"),
        ("rev_per_min", "rev/min"), ("rev_per_s", "rev/s"),
        ("deg_s2", "deg/s²"), ("rad_s2", "rad/s²"), ("mm_s2", "mm/s²"), ("m_s2", "m/s²"),
        ("deg_s", "deg/s"), ("rad_s", "rad/s"), ("mm_s", "mm/s"), ("m_s", "m/s"), ("m_min", "m/min"), ("rev_s", "rev/s"),
        ("rpm", "rpm"), ("degc", "°C"), ("deg", "deg"), ("rad", "rad"), ("rev", "rev"), ("nm", "N·m"), ("kn", "kN"),
        ("mm", "mm"), ("um", "µm"), ("m", "m"), ("ms", "ms"), ("us", "µs"), ("ns", "ns"), ("s", "s"),
    ];

    private static readonly HashSet<string> TimeNames = new(StringComparer.OrdinalIgnoreCase)
    {
        "t", "time", "times", "timestamp", "time stamp", "datetime", "date time", "date/time", "date", "elapsed", "elapsed time", "clock",
        "zeit", "zeitstempel", "datum", "uhrzeit", "temps", "tiempo", "tempo", "tijd", "czas", "tid",
    };

    /// <summary>The unit in brackets at the header's end, such as <c>speed [mm/s]</c> or <c>speed (mm/s)</c>.</summary>
    public static string? Stated(string header)
    {
        var match = Bracketed().Match(header);
        return match.Success && match.Groups[1].Value.Trim() is { Length: > 0 } unit ? unit : null;
    }

    /// <summary>The unit that a name such as <c>qd1_rad_s</c> seems to have. A guess.</summary>
    public static string? Guessed(string header)
    {
        foreach (var (suffix, unit) in Suffixes)
        {
            if (header.Length > suffix.Length + 1 && header.EndsWith(suffix, StringComparison.OrdinalIgnoreCase)
                && header[^(suffix.Length + 1)] == '_')
                return unit;
        }

        return header.EndsWith("_N", StringComparison.Ordinal) && header.Length > 2 ? "N" : null;
    }

    /// <summary>Whether this is what a time column is called.</summary>
    public static bool IsTime(string header)
    {
        var name = Bracketed().Replace(header, "").Trim();
        if (Guessed(name) is { } unit && TimeUnits.PowerToNanoseconds(unit) is not null) name = name[..name.LastIndexOf('_')];
        return TimeNames.Contains(name.Replace('_', ' ').Trim());
    }

    /// <summary>Whether a cell of a row below the header could be a unit: short, without spaces, no word that a digital input
    /// or a mode would show.</summary>
    public static bool LooksLikeUnit(string cell)
    {
        var unit = Strip(cell);
        return unit.Length is > 0 and <= 12 && UnitLetters().IsMatch(unit)
            && !IsSwitchWord(unit);
    }

    /// <summary>Words of digital inputs.</summary>
    public static bool IsSwitchWord(string cell) => cell.Trim().ToUpperInvariant() is "TRUE" or "FALSE" or "ON" or "OFF";

    /// <summary>A unit without the brackets around it.</summary>
    public static string Strip(string cell)
    {
        var unit = cell.Trim();
        return unit.Length > 2 && ((unit[0] == '[' && unit[^1] == ']') || (unit[0] == '(' && unit[^1] == ')')) ? unit[1..^1].Trim() : unit;
    }

    [GeneratedRegex(@"\s*[\[(]([^\[\]()]*)[\])]\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"^[\p{L}%°·\u00B5\u03BCΩ/*^²³⁻¹\-0-9.]+$", RegexOptions.CultureInvariant)]
    private static partial Regex UnitLetters();
}
