using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Explain;

/// <summary>Rounds a critical limit for people so that the number read aloud does not trip: upwards, for lower sides downwards.</summary>
internal static class SafeRounding
{
    private const int Digits = 6;

    /// <summary>The text in the unit, at most one unit of the last shown digit on the safe side of the value.</summary>
    /// <param name="si">The critical limit, SI; finite.</param>
    /// <param name="unit">The user's unit.</param>
    /// <param name="isLower">Whether smaller limits are the safe ones.</param>
    public static string Text(double si, Unit unit, bool isLower)
    {
        var text = unit.Format(si, Digits);
        if (!Quantity.TryParse(text, out var shown, out _)) return text;
        var exact = ExactDouble.Of(si);
        var missing = isLower ? shown!.Exact - exact : exact - shown!.Exact;

        // The double itself is only the nearest to the exact value: within its last bit the text counts as equal.
        if (missing <= exact.Abs() / Fraction.Pow(2, 52)) return text;
        var size = (int)Math.Floor(Math.Log10(Math.Abs(unit.FromSi(si))));
        var places = Math.Clamp(Digits - 1 - size, 0, 300);
        var step = Fraction.One / Fraction.Pow(10, places);
        if (size > 14) step = Fraction.Pow(10, size - Digits + 1);
        return unit.Join(NumberText.Exact(shown.Number + (isLower ? -step : step)));
    }
}
