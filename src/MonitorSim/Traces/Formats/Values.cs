using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace MonitorSim.Traces.Formats;

/// <summary>A stretch of a column of a binary recording. Each value has the text that stands for it in CSV, so that what a cell means is decided in one place.</summary>
internal abstract class Values
{
    /// <summary>The text of a value, empty where it is missing; good until the next call.</summary>
    public abstract ReadOnlySpan<byte> Text(int row);
}

/// <summary>Numbers: the shortest decimal that reads back as the same number, of 16 and 32 bits too (10.3 in 32 bits means ten point three).</summary>
/// <param name="values">One a row.</param>
/// <param name="missing">Which are missing; null: none.</param>
internal sealed class NumberValues<T>(T[] values, bool[]? missing) : Values where T : unmanaged, IUtf8SpanFormattable
{
    private readonly byte[] _text = new byte[64];

    /// <summary>The numbers as doubles where they are doubles, as nothing has to be made text then: a missing one is NaN.</summary>
    public double[]? AsDoubles { get; } = values is double[] doubles ? WithNaN(doubles, missing) : null;

    public override ReadOnlySpan<byte> Text(int row)
    {
        if (missing?[row] == true) return default;
        values[row].TryFormat(_text, out var length, default, CultureInfo.InvariantCulture);
        return _text.AsSpan(0, length);
    }

    private static double[] WithNaN(double[] values, bool[]? missing)
    {
        for (var i = 0; i < missing?.Length; i++)
        {
            if (missing[i]) values[i] = double.NaN;
        }

        return values;
    }
}

/// <summary>Text, and what is told by words: digital inputs.</summary>
/// <param name="values">One a row; null where it is missing.</param>
internal sealed class TextValues(string?[] values) : Values
{
    private byte[] _text = new byte[64];

    public override ReadOnlySpan<byte> Text(int row)
    {
        if (values[row] is not { Length: > 0 } value) return default;
        var most = Encoding.UTF8.GetMaxByteCount(value.Length);
        if (_text.Length < most) _text = new byte[most];
        return _text.AsSpan(0, Encoding.UTF8.GetBytes(value, _text));
    }
}

/// <summary>Codes with a word for each: digital inputs, enumerations. A code without a word is told as a number.</summary>
/// <param name="codes">One a row.</param>
/// <param name="missing">Which are missing; null: none.</param>
/// <param name="words">The words of the codes.</param>
internal sealed class CodedValues(long[] codes, bool[]? missing, IReadOnlyDictionary<long, byte[]> words) : Values
{
    private readonly byte[] _text = new byte[24];

    public override ReadOnlySpan<byte> Text(int row)
    {
        if (missing?[row] == true) return default;
        if (words.TryGetValue(codes[row], out var word)) return word;
        Utf8Formatter.TryFormat(codes[row], _text, out var length);
        return _text.AsSpan(0, length);
    }
}

/// <summary>Moments as integers since 1970-01-01, told as date-times by ISO 8601.</summary>
/// <param name="values">One a row.</param>
/// <param name="missing">Which are missing; null: none.</param>
/// <param name="digits">Digits of a second: 0, 3, 6 or 9.</param>
internal sealed class MomentValues(long[] values, bool[]? missing, int digits) : Values
{
    private readonly byte[] _text = new byte[64];
    private readonly long _second = digits switch { 0 => 1, 3 => 1_000, 6 => 1_000_000, _ => 1_000_000_000 };

    public override ReadOnlySpan<byte> Text(int row)
    {
        if (missing?[row] == true) return default;
        var (seconds, rest) = Math.DivRem(values[row], _second);
        if (rest < 0) (seconds, rest) = (seconds - 1, rest + _second);

        // Beyond the year 9999 there is no date-time: the number itself is told, which is none.
        if (Math.Abs(seconds) > 250_000_000_000 || seconds < -62_135_596_800)
        {
            Utf8Formatter.TryFormat(values[row], _text, out var plain);
            return _text.AsSpan(0, plain);
        }

        DateTime.UnixEpoch.AddTicks(seconds * TimeSpan.TicksPerSecond).TryFormat(_text, out var length, "yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture);
        if (digits == 0) return _text.AsSpan(0, length);
        _text[length++] = (byte)'.';
        Utf8Formatter.TryFormat(rest, _text.AsSpan(length), out _, new('D', (byte)digits));
        return _text.AsSpan(0, length + digits);
    }
}
