using System.Diagnostics.CodeAnalysis;
using Fractions;

namespace MonitorSim.Quantities;

/// <summary>A unit as its user wrote it, with its exact way to SI: si = value · <see cref="Factor"/> + <see cref="Offset"/>.</summary>
/// <param name="Symbol">The spelling that the user chose, such as <c>mm/s</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Exact number of SI units in one of it. Angles take pi as exactly 3.141592653589793.</param>
/// <param name="Offset">SI value of its zero: 0, except for temperatures other than °C.</param>
public sealed record Unit(string Symbol, Dimension Dimension, Fraction Factor, Fraction Offset)
{
    /// <summary>The fixed number that stands for pi everywhere.</summary>
    public static readonly Fraction Pi = new(3141592653589793L, 1000000000000000L);

    /// <summary>Reads a unit such as <c>mm/s</c>, <c>N·m</c> (also Nm), <c>°/s</c>, <c>1/min</c> (the same as rpm), <c>m/s²</c> (also m/s^2).</summary>
    /// <exception cref="FormatException">No unit, or an unknown one; the message names the closest.</exception>
    public static Unit Parse(string symbol) => TryParse(symbol, out var unit, out var error) ? unit! : throw new FormatException(error);

    /// <summary>Reads a unit; on failure <paramref name="error"/> says what is wrong and what would do.</summary>
    public static bool TryParse(string symbol, out Unit? unit, out string? error) => UnitParser.TryParse(symbol, out unit, out error);

    /// <summary>Reads a unit, so that a plan in C# reads like one in JSON.</summary>
    [return: NotNullIfNotNull(nameof(symbol))]
    public static implicit operator Unit?(string? symbol) => symbol is null ? null : Parse(symbol);

    /// <summary>The exact SI value of so many of this unit.</summary>
    public Fraction ToSi(Fraction value) => value * Factor + Offset;

    /// <summary>The exact value in this unit of an SI value.</summary>
    public Fraction FromSi(Fraction si) => (si - Offset) / Factor;

    /// <summary>The value in this unit of an SI value, rounded to the nearest double.</summary>
    public double FromSi(double si) => double.IsFinite(si) ? ExactDouble.Nearest(FromSi(ExactDouble.Of(si))) : si;

    /// <summary>An SI value for people, such as <c>33 mm/s</c>: at most so many significant digits (whole digits are always kept).</summary>
    public string Format(Fraction si, int digits = 6) => Join(NumberText.Rounded(FromSi(si), digits));

    /// <summary>An SI value for people, such as <c>33 mm/s</c>; NaN reads <c>no value</c>.</summary>
    public string Format(double si, int digits = 6) => double.IsFinite(si)
        ? Format(ExactDouble.Of(si), digits)
        : double.IsNaN(si) ? "no value" : Join(si > 0 ? "∞" : "-∞");

    /// <summary>A difference of SI values for people. It differs from <see cref="Format(double, int)"/> only for temperatures in K or °F.</summary>
    public string FormatDifference(double si, int digits = 6) => (this with { Offset = Fraction.Zero }).Format(si, digits);

    /// <summary>The symbol as written.</summary>
    public override string ToString() => Symbol;

    internal string Join(string number) => Symbol == "°" ? number + Symbol : $"{number} {Symbol}";
}
