using System.Globalization;
using System.Runtime.CompilerServices;
using csFastFloat;

namespace MonitorSim.Traces;

/// <summary>What a cell turned out to be when it was read as a number.</summary>
internal enum CellText
{
    Number,
    Missing,
    NotANumber,
    OutOfRange,
}

/// <summary>Decimal numbers as text: <c>[+-]digits[mark digits][e[+-]digits]</c>, read without any rounding but the last one.</summary>
internal static class DecimalText
{
    /// <summary>A longer cell is no number: it would only cost memory.</summary>
    private const int LongestNumber = 2000;
    private const ulong FifteenDigits = 999_999_999_999_999;

    private static readonly double[] Powers =
    [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
    ];

    /// <summary>Reads plain digits with at most one mark: up to 19 digits. False for everything else (which may be a number all
    /// the same).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryDigits(ReadOnlySpan<byte> cell, byte mark, out bool negative, out ulong digits, out int fraction)
    {
        // Signs come at random: a sum instead of a branch. A plus sign is rare.
        negative = cell.Length > 0 && cell[0] == '-';
        var unsigned = cell[(negative ? 1 : 0)..];
        if (BitConverter.IsLittleEndian && (uint)(unsigned.Length - 1) < ShortDigits.Longest) return ShortDigits.TryRead(unsigned, mark, out digits, out fraction);

        // By way of locals of its own, so that those of the short way need no place in memory.
        var isNumber = TryLongDigits(unsigned, mark, out var longDigits, out var longFraction);
        (digits, fraction) = (longDigits, longFraction);
        return isNumber;
    }

    private static bool TryLongDigits(ReadOnlySpan<byte> cell, byte mark, out ulong digits, out int fraction)
    {
        digits = 0;
        fraction = 0;

        // One more than 19 for the mark; 19 nines stay below 2^64.
        if (cell.Length is < 1 or > 20) return false;
        var i = 0;
        uint digit;
        while (i < cell.Length && (digit = (uint)cell[i] - '0') <= 9)
        {
            digits = digits * 10 + digit;
            i++;
        }

        if (i == cell.Length) return i <= 19;
        if (cell[i] != mark || cell.Length == 1) return false;
        var start = ++i;
        while (i < cell.Length && (digit = (uint)cell[i] - '0') <= 9)
        {
            digits = digits * 10 + digit;
            i++;
        }

        fraction = i - start;
        return i == cell.Length;
    }

    /// <summary>The fast way for what nearly every cell is: up to 15 digits, so that mantissa and power of ten are exact doubles
    /// and one division rounds correctly. The shortest decimal of the result is the text again.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryFast(ReadOnlySpan<byte> cell, byte mark, out double value)
    {
        if (!TryDigits(cell, mark, out var negative, out var digits, out var fraction) || digits > FifteenDigits)
        {
            value = 0;
            return false;
        }

        var size = (long)digits / Powers[fraction];
        value = BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(size) | (negative ? 1L : 0L) << 63);
        return true;
    }

    /// <summary>Reads any number. <paramref name="beyond"/> is its exact value where the shortest decimal of the double is
    /// another number, else null.</summary>
    public static CellText Read(ReadOnlySpan<byte> cell, byte mark, out double value, out ExactDecimal? beyond)
    {
        beyond = null;
        value = double.NaN;
        cell = Trim(cell);
        if (IsMissing(cell)) return CellText.Missing;
        if (TryFast(cell, mark, out value)) return CellText.Number;
        if (TryPlain(cell, mark, out value, out beyond)) return CellText.Number;
        if (ExactDecimal.Parse(cell, mark) is not { } exact) return CellText.NotANumber;
        if (exact.Digits.IsZero)
        {
            value = exact.Negative ? -0.0 : 0.0;
            return CellText.Number;
        }

        // Beyond these even the exact value would be of no use, and its power of ten would fill the memory.
        if (exact.Magnitude is > 309 or < -400) return CellText.OutOfRange;
        value = Rounded(cell, mark);
        if (double.IsInfinity(value)) return CellText.OutOfRange;

        // Up to 15 digits survive the way through a normal double, so nothing has to be looked at.
        if (exact.DigitCount <= 15 && Math.Abs(value) >= 2.2250738585072014e-308) return CellText.Number;
        Span<byte> shortest = stackalloc byte[40];
        value.TryFormat(shortest, out var written, "R", CultureInfo.InvariantCulture);
        if (ExactDecimal.Parse(shortest[..written], (byte)'.') != exact) beyond = exact;
        return CellText.Number;
    }

    /// <summary>Empty, or NaN in any case.</summary>
    public static bool IsMissing(ReadOnlySpan<byte> trimmed) =>
        trimmed.Length == 0 || (trimmed.Length == 3 && (trimmed[0] | 32) == 'n' && (trimmed[1] | 32) == 'a' && (trimmed[2] | 32) == 'n');

    /// <summary>Without the spaces and tabs at its ends.</summary>
    public static ReadOnlySpan<byte> Trim(ReadOnlySpan<byte> cell) => cell.Trim(" \t"u8);

    /// <summary>Whether a cell longer than this cannot be a number.</summary>
    public static bool TooLong(int length) => length > LongestNumber;

    // 16 to 19 digits without an exponent, as programs write that show every bit of a double: no large integers needed.
    private static bool TryPlain(ReadOnlySpan<byte> cell, byte mark, out double value, out ExactDecimal? beyond)
    {
        value = 0;
        beyond = null;
        if (!TryDigits(cell, mark, out var negative, out var digits, out var fraction) || digits == 0) return false;
        value = Rounded(cell, mark);
        Span<byte> text = stackalloc byte[40];
        value.TryFormat(text, out var written, "R", CultureInfo.InvariantCulture);
        if (!TryDigits(text[..written], (byte)'.', out _, out var shortest, out var shortestFraction)) return false;
        WithoutTrailingZeros(ref digits, ref fraction);
        WithoutTrailingZeros(ref shortest, ref shortestFraction);
        if (digits != shortest || fraction != shortestFraction) beyond = ExactDecimal.Of(negative, digits, -fraction);
        return true;
    }

    private static void WithoutTrailingZeros(ref ulong digits, ref int fraction)
    {
        while (digits % 10 == 0)
        {
            digits /= 10;
            fraction--;
        }
    }

    private static double Rounded(ReadOnlySpan<byte> cell, byte mark)
    {
        if (FastDoubleParser.TryParseDouble(cell, out int consumed, out var value, NumberStyles.Float, mark, 0) && consumed == cell.Length) return value;

        // A plus sign, for one, is not taken there.
        Span<byte> copy = stackalloc byte[cell.Length];
        cell.CopyTo(copy);
        copy.Replace(mark, (byte)'.');
        return double.Parse(copy, NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
