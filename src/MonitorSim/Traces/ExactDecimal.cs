using System.Globalization;
using System.Numerics;
using Fractions;

namespace MonitorSim.Traces;

/// <summary>The number that a decimal text stands for: digits · 10^exponent, without trailing zeros, so that equal numbers are
/// equal records.</summary>
/// <param name="Negative">Whether it has a minus sign; false for zero would lose "-0".</param>
/// <param name="Digits">All digits as one integer, not divisible by 10 unless it is zero.</param>
/// <param name="Exponent">The power of ten.</param>
/// <param name="DigitCount">How many digits it has.</param>
internal readonly record struct ExactDecimal(bool Negative, BigInteger Digits, int Exponent, int DigitCount)
{
    /// <summary>Exponents beyond this are cut: no number of that size is accepted anyway.</summary>
    private const int LargestExponent = 100_000;

    /// <summary>The place of the first digit: the number lies between 10^(magnitude-1) and 10^magnitude.</summary>
    public int Magnitude => DigitCount + Exponent;

    /// <summary>The same number as a fraction.</summary>
    public Fraction ToFraction()
    {
        var signed = Negative ? -Digits : Digits;
        return Exponent >= 0
            ? new Fraction(signed * BigInteger.Pow(10, Exponent))
            : new Fraction(signed, BigInteger.Pow(10, -Exponent));
    }

    /// <summary>digits · 10^exponent; the digits are not divisible by 10.</summary>
    public static ExactDecimal Of(bool negative, ulong digits, int exponent)
    {
        var count = 0;
        for (var rest = digits; rest > 0; rest /= 10) count++;
        return new ExactDecimal(negative, digits, exponent, count);
    }

    /// <summary>Reads <c>[+-]digits[mark digits][e[+-]digits]</c>; null for anything else.</summary>
    public static ExactDecimal? Parse(ReadOnlySpan<byte> text, byte mark)
    {
        if (DecimalText.TooLong(text.Length)) return null;
        var i = 0;
        var negative = false;
        if (text.Length > 0 && (text[0] == '-' || text[0] == '+'))
        {
            negative = text[0] == '-';
            i = 1;
        }

        Span<byte> digits = stackalloc byte[text.Length];
        var count = 0;
        var seen = 0;
        var exponent = 0;
        var marked = false;
        for (; i < text.Length; i++)
        {
            var c = text[i];
            if (c == mark && !marked)
            {
                marked = true;
                continue;
            }

            if (c is < (byte)'0' or > (byte)'9') break;
            seen++;
            if (marked) exponent--;
            if (count > 0 || c != '0') digits[count++] = c;
        }

        if (seen == 0) return null;
        if (i < text.Length)
        {
            if ((text[i] | 32) != 'e' || !TryExponent(text[(i + 1)..], out var power)) return null;
            exponent += power;
        }

        while (count > 0 && digits[count - 1] == '0')
        {
            count--;
            exponent++;
        }

        if (count == 0) return new ExactDecimal(negative, BigInteger.Zero, 0, 0);
        var value = count <= 19
            ? ulong.Parse(digits[..count], NumberStyles.None, CultureInfo.InvariantCulture)
            : BigInteger.Parse(System.Text.Encoding.ASCII.GetString(digits[..count]), NumberStyles.None, CultureInfo.InvariantCulture);
        return new ExactDecimal(negative, value, exponent, count);
    }

    private static bool TryExponent(ReadOnlySpan<byte> text, out int power)
    {
        power = 0;
        var i = 0;
        var negative = false;
        if (text.Length > 0 && (text[0] == '-' || text[0] == '+'))
        {
            negative = text[0] == '-';
            i = 1;
        }

        if (i == text.Length) return false;
        for (; i < text.Length; i++)
        {
            if (text[i] is < (byte)'0' or > (byte)'9') return false;
            power = Math.Min(power * 10 + (text[i] - '0'), LargestExponent);
        }

        if (negative) power = -power;
        return true;
    }
}
