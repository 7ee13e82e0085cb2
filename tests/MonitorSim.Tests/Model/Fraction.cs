using System.Globalization;
using System.Numerics;

namespace MonitorSim.Tests.Model;

/// <summary>An exact rational number; the denominator is positive. Not reduced: numbers of one recording share their denominators.</summary>
internal readonly struct Fraction(BigInteger numerator, BigInteger denominator) : IComparable<Fraction>
{
    public static readonly Fraction Zero = new(0, 1);

    private BigInteger Numerator { get; } = numerator;

    private BigInteger Denominator { get; } = denominator;

    public int Sign => Numerator.Sign;

    public Fraction Abs => Sign < 0 ? -this : this;

    public static implicit operator Fraction(long whole) => new(whole, 1);

    public static Fraction operator -(Fraction a) => new(-a.Numerator, a.Denominator);

    public static Fraction operator +(Fraction a, Fraction b) => a.Denominator == b.Denominator
        ? new(a.Numerator + b.Numerator, a.Denominator)
        : Reduced(a.Numerator * b.Denominator + b.Numerator * a.Denominator, a.Denominator * b.Denominator);

    public static Fraction operator -(Fraction a, Fraction b) => a + -b;

    public static Fraction operator *(Fraction a, Fraction b) => Reduced(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Fraction operator /(Fraction a, Fraction b) => b.Sign < 0 ? -a / -b : Reduced(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    public static bool operator >(Fraction a, Fraction b) => a.CompareTo(b) > 0;

    public static bool operator <(Fraction a, Fraction b) => a.CompareTo(b) < 0;

    public static bool operator >=(Fraction a, Fraction b) => a.CompareTo(b) >= 0;

    public static bool operator <=(Fraction a, Fraction b) => a.CompareTo(b) <= 0;

    public static Fraction Max(Fraction a, Fraction b) => a >= b ? a : b;

    public static Fraction Min(Fraction a, Fraction b) => a <= b ? a : b;

    /// <summary>The whole number below or at it.</summary>
    public BigInteger Floor()
    {
        var whole = BigInteger.DivRem(Numerator, Denominator, out var rest);
        return rest.Sign < 0 ? whole - 1 : whole;
    }

    public int CompareTo(Fraction other) => Denominator == other.Denominator
        ? Numerator.CompareTo(other.Numerator)
        : (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    /// <summary>A decimal text such as "-12.50"; no exponent.</summary>
    public static Fraction Parse(string text)
    {
        var dot = text.IndexOf('.', StringComparison.Ordinal);
        var digits = BigInteger.Parse(text.Replace(".", "", StringComparison.Ordinal), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        return Reduced(digits, BigInteger.Pow(10, dot < 0 ? 0 : text.Length - dot - 1));
    }

    /// <summary>Near enough for a comparison to 1e-9 relative.</summary>
    public double ToDouble() => (double)Numerator / (double)Denominator;

    private static Fraction Reduced(BigInteger numerator, BigInteger denominator)
    {
        var common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        return common.IsOne ? new(numerator, denominator) : new(numerator / common, denominator / common);
    }
}
