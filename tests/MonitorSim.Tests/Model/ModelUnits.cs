using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>The units that the random plans use, as exact factors to SI, and how the model reads fields of a plan.</summary>
internal static class ModelUnits
{
    private static readonly Fraction Pi = Fraction.Parse("3.141592653589793");

    private static readonly Dictionary<string, Fraction> Factors = new()
    {
        ["m"] = 1, ["mm"] = Milli, ["m/s"] = 1, ["mm/s"] = Milli, ["m/min"] = (Fraction)1 / 60, ["mm/min"] = (Fraction)1 / 60000,
        ["m/s²"] = 1, ["mm/s²"] = Milli, ["N"] = 1, ["kN"] = 1000, ["N·m"] = 1, ["Nm"] = 1, ["kN·m"] = 1000, ["mN·m"] = Milli, ["°C"] = 1,
        ["rad"] = 1, ["rad/s"] = 1, ["rad/s²"] = 1, ["deg"] = Pi / 180, ["deg/s"] = Pi / 180, ["deg/s²"] = Pi / 180,
        ["rev"] = Pi * 2, ["rev/s²"] = Pi * 2, ["rpm"] = Pi / 30, ["m/rev"] = 1 / (Pi * 2), ["mm/rev"] = Milli / (Pi * 2),
        ["s"] = 1_000_000_000, ["ms"] = 1_000_000, ["us"] = 1000, ["ns"] = 1, ["Hz"] = 1, ["kHz"] = 1000,
    };

    private static Fraction Milli => (Fraction)1 / 1000;

    /// <summary>What one of a unit is in SI; of times in ns.</summary>
    public static Fraction Factor(string unit) => Factors[unit];

    /// <summary>A quantity such as "33 mm/s" in SI.</summary>
    public static Fraction Parse(string quantity)
    {
        var space = quantity.IndexOf(' ', StringComparison.Ordinal);
        return Fraction.Parse(quantity[..space]) * Factors[quantity[(space + 1)..]];
    }

    /// <summary>To the nearest whole number, halves up.</summary>
    public static long Round(Fraction value) => (long)(value + (Fraction)1 / 2).Floor();

    public static JsonElement? Field(this JsonElement element, string name) => element.TryGetProperty(name, out var field) ? field : null;

    public static string? Text(this JsonElement element, string name) => element.Field(name)?.GetString();

    public static bool Flag(this JsonElement element, string name) => element.Field(name)?.GetBoolean() ?? false;

    public static Fraction? Quantity(this JsonElement element, string name) => element.Text(name) is { } text ? Parse(text) : null;

    /// <summary>A time in ns; 0 where it is not given.</summary>
    public static long Time(this JsonElement element, string name) => element.Text(name) is { } text ? Round(Parse(text)) : 0;
}
