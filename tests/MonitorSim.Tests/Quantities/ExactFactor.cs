using System.Globalization;
using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Tests.Quantities;

/// <summary>Recovers the exact factor of a unit from the double that a units library gives for it.</summary>
/// <remarks>Units are defined by short decimals (inch 0.0254 m), by the inverse of one (km/h 1/3.6 m/s), or by such a number times
/// pi (degree pi/180). A double has 15 to 17 digits, so a definition of up to 14 digits shows through the rounding.</remarks>
internal static class ExactFactor
{
    /// <summary>A few roundings of the library's own arithmetic.</summary>
    private const double Slack = 1e-15;

    /// <summary>The definition behind the double; its shortest decimal where none of the known forms fits.</summary>
    public static Fraction Of(double factor) =>
        Rational(factor) ?? Rational(factor / Math.PI) * Unit.Pi ?? Decimal(factor.ToString("R", CultureInfo.InvariantCulture));

    private static Fraction? Rational(double value) => ShortDecimal(value) ?? ShortDecimal(1 / value)?.Reciprocal();

    private static Fraction? ShortDecimal(double value)
    {
        var text = value.ToString("E13", CultureInfo.InvariantCulture);
        var rounded = double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
        return Math.Abs(rounded - value) <= Slack * Math.Abs(value) ? Decimal(text) : null;
    }

    private static Fraction Decimal(string text) => Fraction.FromString(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
