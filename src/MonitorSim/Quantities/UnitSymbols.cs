using System.Globalization;
using System.Numerics;
using Fractions;

namespace MonitorSim.Quantities;

/// <summary>Single symbols (no products, no quotients), by exact spelling: our own, then a table that a test holds in step with a units library.</summary>
internal static class UnitSymbols
{
    /// <summary>What one of the symbol is in SI.</summary>
    public readonly record struct Symbol(Dimension Dimension, Fraction Factor);

    /// <summary>What the quantities of the table measure.</summary>
    private static readonly Dictionary<string, Dimension> Quantities = new(StringComparer.Ordinal)
    {
        ["Duration"] = Dimension.Second, ["Length"] = Dimension.Metre, ["Mass"] = Dimension.Kilogram, ["Angle"] = Dimension.Radian, ["Force"] = Dimension.Newton,
        ["Torque"] = Dimension.NewtonMetre, ["Energy"] = Dimension.NewtonMetre, ["Power"] = Dimension.NewtonMetre / Dimension.Second,
        ["Speed"] = Dimension.Metre / Dimension.Second, ["Frequency"] = Dimension.Hertz, ["ElectricCurrent"] = Dimension.Ampere,
        ["ElectricPotential"] = Dimension.Volt, ["ElectricResistance"] = Dimension.Volt / Dimension.Ampere,
        ["MagneticFlux"] = Dimension.Volt * Dimension.Second, ["ElectricInductance"] = Dimension.Volt * Dimension.Second / Dimension.Ampere,
    };

    private static readonly Fraction Turn = 2 * Unit.Pi;
    private static readonly Fraction PoundForce = new(44482216152605, 10000000000000);

    /// <summary>Spellings that the table lacks, rounds, or means otherwise (m is a metre, not a minute; A no ångström).</summary>
    private static readonly Dictionary<string, Symbol> Own = new(StringComparer.Ordinal)
    {
        ["m"] = new(Dimension.Metre, 1),
        ["A"] = new(Dimension.Ampere, 1),
        ["rev"] = new(Dimension.Radian, Turn), ["r"] = new(Dimension.Radian, Turn), ["turn"] = new(Dimension.Radian, Turn),
        ["rpm"] = new(Dimension.Radian / Dimension.Second, Turn / 60),
        ["Nm"] = new(Dimension.NewtonMetre, 1), ["kNm"] = new(Dimension.NewtonMetre, 1000), ["MNm"] = new(Dimension.NewtonMetre, 1000000),
        ["mNm"] = new(Dimension.NewtonMetre, new(1, 1000)), ["Ncm"] = new(Dimension.NewtonMetre, new(1, 100)),
        ["Nmm"] = new(Dimension.NewtonMetre, new(1, 1000)),
        ["ozf"] = new(Dimension.Newton, PoundForce / 16),
        ["Vs"] = new(Dimension.Volt * Dimension.Second, 1), ["mWb"] = new(Dimension.Volt * Dimension.Second, new(1, 1000)),
        ["°C"] = new(Dimension.Celsius, 1), ["K"] = new(Dimension.Celsius, 1), ["°F"] = new(Dimension.Celsius, new(5, 9)),
    };

    private static readonly Lazy<Dictionary<string, Symbol>> All = new(ReadTable);

    /// <summary>The usual symbols, those of machines first: among equally near ones these are what was meant.</summary>
    private static readonly string[] Usual =
    [
        "mm", "m", "s", "ms", "us", "µs", "ns", "min", "h", "deg", "°", "rad", "rev", "rpm", "N", "kN", "N·m", "Nm", "kNm", "mNm", "kg", "g",
        "Hz", "kHz", "MHz", "A", "V", "Ω", "mΩ", "H", "mH", "Wb", "J", "kJ", "W", "kW", "µm", "cm", "km", "in", "ft", "lbf", "°C", "K", "°F",
    ];

    /// <summary>Looks up one symbol; spelling and case count.</summary>
    public static bool TryFind(string symbol, out Symbol found)
    {
        if (Own.TryGetValue(symbol, out found) || All.Value.TryGetValue(symbol, out found)) return true;

        // us, um, uH: the Greek letter is not on every keyboard.
        return symbol.Length > 1 && symbol[0] == 'u' && All.Value.TryGetValue("µ" + symbol[1..], out found);
    }

    /// <summary>The known symbol nearest to an unknown one, or null.</summary>
    public static string? Closest(string symbol) => ClosestName.Of(symbol, Usual.Concat(Own.Keys).Concat(All.Value.Keys));

    private static Dictionary<string, Symbol> ReadTable()
    {
        using var table = new StreamReader(typeof(UnitSymbols).Assembly.GetManifestResourceStream("MonitorSim.Quantities.units.tsv")!);
        var all = new Dictionary<string, Symbol>(StringComparer.Ordinal);
        while (table.ReadLine() is { } line)
        {
            var cells = line.Split('\t');
            all.Add(cells[1], new(Quantities[cells[0]], new Fraction(Whole(cells[2]), Whole(cells[3]))));
        }

        return all;
    }

    private static BigInteger Whole(string digits) => BigInteger.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
}
