using System.Numerics;
using Fractions;

namespace MonitorSim.Traces;

/// <summary>A moment as its text gives it, in nanoseconds without rounding.</summary>
/// <param name="Atto">Integer multiples of 10^-9 ns (10^-18 s), where that is enough.</param>
/// <param name="Finer">The value in ns where it has still finer digits, else null.</param>
internal readonly record struct ExactTime(Int128 Atto, Fraction? Finer)
{
    /// <summary>10^-18 s in a nanosecond.</summary>
    public const long AttoPerNanosecond = 1_000_000_000;
    private static readonly BigInteger Largest = (BigInteger)Int128.MaxValue / 4;

    /// <summary>digits · 10^exponent ns.</summary>
    public static ExactTime Of(ExactDecimal number, int powerToNanoseconds)
    {
        var exponent = number.Exponent + powerToNanoseconds;
        if (exponent >= -9)
        {
            var atto = number.Digits * BigInteger.Pow(10, exponent + 9);
            if (atto <= Largest) return new ExactTime((Int128)(number.Negative ? -atto : atto), null);
        }

        return new ExactTime(0, (number with { Exponent = exponent }).ToFraction());
    }

    /// <summary>This minus the first, rounded to the nearest nanosecond, halves up; null beyond what 64 bits hold (292 years).</summary>
    public long? NanosecondsSince(ExactTime first)
    {
        if (Finer is null && first.Finer is null)
        {
            var twice = 2 * (Atto - first.Atto) + AttoPerNanosecond;
            var rounded = FloorDivide(twice, 2 * AttoPerNanosecond);
            return rounded >= long.MinValue && rounded <= long.MaxValue ? (long)rounded : null;
        }

        var difference = Nanoseconds - first.Nanoseconds;
        var floor = FloorDivide(2 * difference.Numerator + difference.Denominator, 2 * difference.Denominator);
        return floor >= long.MinValue && floor <= long.MaxValue ? (long)floor : null;
    }

    private Fraction Nanoseconds => Finer ?? new Fraction((BigInteger)Atto, AttoPerNanosecond);

    private static Int128 FloorDivide(Int128 a, Int128 b)
    {
        var quotient = a / b;
        return a % b < 0 ? quotient - 1 : quotient;
    }

    private static BigInteger FloorDivide(BigInteger a, BigInteger b)
    {
        var quotient = BigInteger.DivRem(a, b, out var remainder);
        return remainder.Sign < 0 ? quotient - 1 : quotient;
    }
}
