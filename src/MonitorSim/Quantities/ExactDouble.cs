using System.Numerics;
using Fractions;

namespace MonitorSim.Quantities;

/// <summary>Between doubles and fractions, exactly: the fractions library misreads doubles below 2^-1022 and rounds twice on the way back.</summary>
internal static class ExactDouble
{
    /// <summary>The exact value of a finite double.</summary>
    public static Fraction Of(double value)
    {
        var bits = BitConverter.DoubleToInt64Bits(value);
        var biased = (int)(bits >> 52 & 0x7FF);
        BigInteger mantissa = biased == 0 ? bits & 0xFFFFFFFFFFFFF : bits & 0xFFFFFFFFFFFFF | 0x10000000000000;
        var exponent = Math.Max(biased, 1) - 1075;
        if (bits < 0) mantissa = -mantissa;
        return exponent >= 0 ? new(mantissa << exponent) : new(mantissa, BigInteger.One << -exponent);
    }

    /// <summary>The double nearest to a fraction, ties to even.</summary>
    public static double Nearest(Fraction value)
    {
        var numerator = BigInteger.Abs(value.Numerator);
        var denominator = value.Denominator;
        if (numerator.IsZero) return 0;

        // A quotient of at least 64 bits, with the remainder as a sticky last bit, rounds once and rightly.
        var shift = 66 - (int)(numerator.GetBitLength() - denominator.GetBitLength());
        var (scaledNumerator, scaledDenominator) = shift >= 0 ? (numerator << shift, denominator) : (numerator, denominator << -shift);
        var quotient = BigInteger.DivRem(scaledNumerator, scaledDenominator, out var remainder);
        var bits = (int)quotient.GetBitLength();
        var exponent = bits - shift;

        // 53 bits for normal numbers, fewer below 2^-1022.
        var kept = Math.Min(53, exponent + 1074);
        if (kept < 0) return value.Numerator.Sign < 0 ? -0.0 : 0.0;
        var drop = bits - kept;
        var mantissa = quotient >> drop;
        var rest = quotient - (mantissa << drop);
        var half = BigInteger.One << (drop - 1);
        var comparison = rest.CompareTo(half);
        if (comparison == 0 && !remainder.IsZero) comparison = 1;
        if (comparison > 0 || (comparison == 0 && !mantissa.IsEven)) mantissa++;
        var magnitude = Math.ScaleB((double)(long)mantissa, drop - shift);
        return value.Numerator.Sign < 0 ? -magnitude : magnitude;
    }
}
