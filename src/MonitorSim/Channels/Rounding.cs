using System.Numerics;
using Fractions;

namespace MonitorSim.Channels;

/// <summary>The way from exact fractions to doubles, and the unit by which doubles err.</summary>
internal static class Rounding
{
    /// <summary>Largest relative error of one correctly rounded operation, 2^-53.</summary>
    public const double Unit = 1.1102230246251565e-16;

    /// <summary>The double nearest to the fraction, ties to even.</summary>
    public static double ToDouble(Fraction exact)
    {
        var numerator = BigInteger.Abs(exact.Numerator);
        if (numerator.IsZero) return 0.0;
        var denominator = exact.Denominator;

        // Scale so that the quotient has 54 to 55 bits, one or two more than a double holds, and let the remainder decide ties.
        var shift = 55 - (int)(numerator.GetBitLength() - denominator.GetBitLength());
        shift = Math.Min(shift, 1074 + 2);
        var quotient = shift >= 0
            ? BigInteger.DivRem(numerator << shift, denominator, out var remainder)
            : BigInteger.DivRem(numerator, denominator << -shift, out remainder);
        var surplus = (int)Math.Max(quotient.GetBitLength() - 53, shift - 1074);
        if (surplus > 0)
        {
            var mask = (BigInteger.One << surplus) - 1;
            var rest = quotient & mask;
            var half = BigInteger.One << (surplus - 1);
            quotient >>= surplus;
            shift -= surplus;
            if (rest > half || (rest == half && (!remainder.IsZero || !quotient.IsEven))) quotient += 1;
        }

        var magnitude = Math.ScaleB((double)quotient, -shift);
        return exact.Numerator.Sign < 0 ? -magnitude : magnitude;
    }
}
