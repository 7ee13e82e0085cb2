using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using Fractions;

namespace MonitorSim.Quantities;

/// <summary>A number with a unit, kept as written and convertible to SI without rounding. Two are equal where number and unit are
/// (<c>33.0 mm/s</c> and <c>33 mm/s</c>); to compare across units, compare <see cref="Exact"/>.</summary>
/// <param name="Number">The number as written.</param>
/// <param name="Unit">The unit as written.</param>
public sealed record Quantity(Fraction Number, Unit Unit)
{
    private string? _text;

    /// <summary>The number as written.</summary>
    public Fraction Number { get; init { field = value; _text = null; } } = Number;

    /// <summary>The unit as written.</summary>
    public Unit Unit { get; init { field = value; _text = null; } } = Unit;

    /// <summary>The exact value in SI units (m, s, kg, rad, N, °C …).</summary>
    public Fraction Exact => Unit.ToSi(Number);

    /// <summary>The exact SI value of the quantity as a difference. It differs from <see cref="Exact"/> only for temperatures in K or
    /// °F: a hysteresis of 2 K is one of 2 °C.</summary>
    public Fraction ExactDifference => Number * Unit.Factor;

    /// <summary>The value in SI units, rounded to the nearest double.</summary>
    public double Si => ExactDouble.Nearest(Exact);

    /// <summary>A duration in integer nanoseconds, rounded to the nearest, halves up.</summary>
    /// <exception cref="InvalidOperationException">The quantity is not a duration.</exception>
    /// <exception cref="OverflowException">It is longer than 292 years.</exception>
    public long Nanoseconds
    {
        get
        {
            if (Unit.Dimension != Dimension.Second) throw new InvalidOperationException($"'{this}' is no duration; write one in s, ms, us or ns");
            var doubled = Exact * 2_000_000_000 + Fraction.One;
            return (long)Floor(doubled.Numerator, 2 * doubled.Denominator);
        }
    }

    /// <summary>Reads text such as <c>33 mm/s</c>; invariant culture, point or comma as decimal mark, exponents allowed.</summary>
    /// <exception cref="FormatException">No number, no unit, or an unknown unit; the message says what would do.</exception>
    public static Quantity Parse(string text) => TryParse(text, out var quantity, out var error) ? quantity! : throw new FormatException(error);

    /// <summary>Reads text such as <c>33 mm/s</c>; on failure <paramref name="error"/> says what is wrong and what would do.</summary>
    public static bool TryParse(string text, out Quantity? quantity, out string? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        quantity = null;
        var trimmed = text.Trim();
        if (!NumberText.TrySplit(trimmed, out var number, out var symbol))
        {
            error = $"'{Shorten(trimmed)}' is no quantity; write a number and a unit, such as 33 mm/s or 12,5 N·m, without grouping of digits";
            return false;
        }

        if (symbol.Length == 0)
        {
            error = $"'{Shorten(trimmed)}' has no unit; write one, such as '{Shorten(trimmed)} mm', '{Shorten(trimmed)} deg' or '{Shorten(trimmed)} ms'";
            return false;
        }

        if (!Unit.TryParse(symbol, out var unit, out error)) return false;
        quantity = new(number, unit!) { _text = trimmed };
        return true;
    }

    /// <summary>Reads text such as <c>33 mm/s</c>, so that a plan in C# reads like one in JSON.</summary>
    [return: NotNullIfNotNull(nameof(text))]
    public static implicit operator Quantity?(string? text) => text is null ? null : Parse(text);

    /// <summary>Whether number and unit are the same.</summary>
    public bool Equals(Quantity? other) => other is not null && Number == other.Number && Unit == other.Unit;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Number, Unit);

    /// <summary>The number and unit as written.</summary>
    public override string ToString() => _text ?? Unit.Join(NumberText.Exact(Number));

    private static BigInteger Floor(BigInteger numerator, BigInteger denominator)
    {
        var quotient = BigInteger.DivRem(numerator, denominator, out var remainder);
        return remainder.Sign < 0 ? quotient - 1 : quotient;
    }

    private static string Shorten(string text) => text.Length <= 40 ? text : text[..39] + "…";
}
