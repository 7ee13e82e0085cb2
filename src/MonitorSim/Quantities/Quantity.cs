using Fractions;

namespace MonitorSim.Quantities;

/// <summary>A number with a unit, kept as written and convertible to SI without rounding.</summary>
/// <param name="Number">The number as written.</param>
/// <param name="Unit">The unit as written.</param>
public sealed record Quantity(Fraction Number, Unit Unit)
{
    /// <summary>The exact value in SI units (m, s, kg, rad, N, °C …).</summary>
    public Fraction Exact => Number * Unit.Factor + Unit.Offset;

    /// <summary>The value in SI units, rounded to the nearest double.</summary>
    public double Si => Exact.ToDouble();

    /// <summary>A duration in integer nanoseconds, rounded to the nearest, halves up.</summary>
    /// <exception cref="InvalidOperationException">The quantity is not a duration.</exception>
    public long Nanoseconds => throw new NotImplementedException();

    /// <summary>Reads text such as <c>33 mm/s</c>; invariant culture, point or comma as decimal mark.</summary>
    /// <exception cref="FormatException">No number, no unit, or an unknown unit; the message says what would do.</exception>
    public static Quantity Parse(string text) => throw new NotImplementedException();

    /// <summary>Reads text such as <c>33 mm/s</c>; on failure <paramref name="error"/> says what is wrong and what would do.</summary>
    public static bool TryParse(string text, out Quantity? quantity, out string? error) => throw new NotImplementedException();

    /// <summary>Reads text such as <c>33 mm/s</c>, so that a plan in C# reads like one in JSON.</summary>
    public static implicit operator Quantity(string text) => Parse(text);

    /// <summary>The number and unit as written.</summary>
    public override string ToString() => throw new NotImplementedException();
}
