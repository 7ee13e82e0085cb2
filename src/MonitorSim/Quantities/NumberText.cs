using System.Globalization;
using System.Numerics;
using System.Text.RegularExpressions;
using Fractions;

namespace MonitorSim.Quantities;

/// <summary>Decimal numbers as text, exact in both directions and independent of culture.</summary>
internal static partial class NumberText
{
    // Larger exponents would make integers of millions of digits out of a few characters.
    private const int LargestExponent = 400;

    [GeneratedRegex(@"^(?<number>[+\-\u2212]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+\-]?[0-9]{1,4})?)(?![0-9.,])")]
    private static partial Regex LeadingNumber();

    /// <summary>Splits text into a leading number (point or comma as decimal mark, no grouping) and the rest, trimmed.</summary>
    public static bool TrySplit(string text, out Fraction number, out string rest)
    {
        number = Fraction.Zero;
        rest = "";
        var match = LeadingNumber().Match(text);
        if (!match.Success || !TryRead(match.Value, out number)) return false;
        rest = text[match.Length..].Trim();
        return true;
    }

    /// <summary>Reads a decimal number that fills the whole text.</summary>
    public static bool TryRead(string text, out Fraction number)
    {
        number = Fraction.Zero;
        if (text.Length > 1000) return false;
        var match = LeadingNumber().Match(text);
        if (!match.Success || match.Length != text.Length) return false;
        var plain = text.Replace(',', '.').Replace('\u2212', '-');
        var mark = plain.IndexOfAny(['e', 'E']);
        if (mark >= 0 && Math.Abs(int.Parse(plain[(mark + 1)..], CultureInfo.InvariantCulture)) > LargestExponent) return false;
        if (plain.IndexOf('.', StringComparison.Ordinal) is var point and >= 0)
        {
            if (point + 1 == plain.Length || !char.IsAsciiDigit(plain[point + 1])) plain = plain.Remove(point, 1);
            else if (point == 0 || !char.IsAsciiDigit(plain[point - 1])) plain = plain.Insert(point, "0");
        }

        return Fraction.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out number);
    }

    /// <summary>The decimal of the fraction where it has one of at most 30 digits; else 17 digits of it.</summary>
    public static string Exact(Fraction value)
    {
        for (var digits = 0; digits <= 30; digits++)
        {
            var scaled = value * Fraction.Pow(10, digits);
            if (scaled.Denominator.IsOne) return Place(scaled.Numerator, digits);
        }

        return ExactDouble.Nearest(value).ToString("R", CultureInfo.InvariantCulture);
    }

    /// <summary>For people: rounded to so many significant digits (whole digits are kept), no trailing zeros.</summary>
    public static string Rounded(Fraction value, int digits)
    {
        if (value == Fraction.Zero) return "0";
        var size = (int)Math.Floor(Math.Log10(Math.Abs(ExactDouble.Nearest(value))));
        if (size is < -5 or > 14) return ExactDouble.Nearest(value).ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var places = Math.Max(0, digits - 1 - size);
        return Place(RoundHalfAway(value * Fraction.Pow(10, places)), places);
    }

    private static BigInteger RoundHalfAway(Fraction value)
    {
        var doubled = 2 * BigInteger.Abs(value.Numerator) + value.Denominator;
        return value.Numerator.Sign * (doubled / (2 * value.Denominator));
    }

    private static string Place(BigInteger digits, int places)
    {
        var text = BigInteger.Abs(digits).ToString(CultureInfo.InvariantCulture).PadLeft(places + 1, '0');
        if (places > 0) text = $"{text[..^places]}.{text[^places..]}".TrimEnd('0').TrimEnd('.');
        return digits.Sign < 0 ? "-" + text : text;
    }
}
