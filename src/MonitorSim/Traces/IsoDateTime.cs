using System.Globalization;
using System.Numerics;

namespace MonitorSim.Traces;

/// <summary>Date-times by ISO 8601: <c>2024-03-01T12:30:00.25Z</c>; a space for the T, a comma for the point, any number of
/// digits, no seconds, no time at all, the basic form without hyphens and colons, and offsets such as +01:00 will do. Without an
/// offset UTC is taken: only differences count.</summary>
internal static class IsoDateTime
{
    /// <summary>The exact moment since 1970-01-01, or null where the text is none.</summary>
    public static ExactTime? Parse(ReadOnlySpan<byte> text)
    {
        var rest = text;
        if (!Digits(ref rest, 4, out var year)) return null;
        var extended = Skip(ref rest, '-');
        if (!Digits(ref rest, 2, out var month) || (extended && !Skip(ref rest, '-')) || !Digits(ref rest, 2, out var day)) return null;
        if (year < 1 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month)) return null;

        // A bare run of eight digits is a number rather than a date.
        if (rest.IsEmpty && !extended) return null;
        var seconds = (new DateTime(year, month, day).Ticks - DateTime.UnixEpoch.Ticks) / TimeSpan.TicksPerSecond;
        var fraction = ReadOnlySpan<byte>.Empty;
        if (!rest.IsEmpty)
        {
            if (!Skip(ref rest, 'T') && !Skip(ref rest, 't') && !Skip(ref rest, ' ')) return null;
            if (!Clock(ref rest, ref seconds, ref fraction) || !Offset(rest, ref seconds)) return null;
        }

        return Exact(seconds, fraction);
    }

    private static bool Clock(ref ReadOnlySpan<byte> rest, ref long seconds, ref ReadOnlySpan<byte> fraction)
    {
        if (!Digits(ref rest, 2, out var hour)) return false;
        var colons = Skip(ref rest, ':');
        if (!Digits(ref rest, 2, out var minute)) return false;
        var second = 0;
        if (colons ? Skip(ref rest, ':') : !rest.IsEmpty && rest[0] is >= (byte)'0' and <= (byte)'9')
        {
            if (!Digits(ref rest, 2, out second)) return false;
            if (Skip(ref rest, '.') || Skip(ref rest, ','))
            {
                var count = 0;
                while (count < rest.Length && rest[count] is >= (byte)'0' and <= (byte)'9') count++;
                if (count == 0) return false;
                fraction = rest[..count];
                rest = rest[count..];
            }
        }

        // 24:00 ends a day, and second 60 is a leap second: both are the moment after.
        if (hour > 24 || minute > 59 || second > 60 || (hour == 24 && (minute > 0 || second > 0 || !fraction.IsEmpty))) return false;
        seconds += hour * 3600L + minute * 60 + second;
        return true;
    }

    private static bool Offset(ReadOnlySpan<byte> rest, ref long seconds)
    {
        if (rest.IsEmpty) return true;
        if (rest.Length == 1 && (rest[0] | 32) == 'z') return true;
        var ahead = Skip(ref rest, '+');
        if (!ahead && !Skip(ref rest, '-')) return false;
        if (!Digits(ref rest, 2, out var hours)) return false;
        var minutes = 0;
        if (!rest.IsEmpty)
        {
            Skip(ref rest, ':');
            if (!Digits(ref rest, 2, out minutes)) return false;
        }

        if (!rest.IsEmpty || hours > 23 || minutes > 59) return false;
        var offset = hours * 3600L + minutes * 60;
        seconds -= ahead ? offset : -offset;
        return true;
    }

    private static ExactTime Exact(long seconds, ReadOnlySpan<byte> fraction)
    {
        fraction = fraction.TrimEnd((byte)'0');
        var digits = fraction.IsEmpty
            ? BigInteger.Zero
            : BigInteger.Parse(System.Text.Encoding.ASCII.GetString(fraction), NumberStyles.None, CultureInfo.InvariantCulture);
        var total = seconds * BigInteger.Pow(10, fraction.Length) + digits;
        return ExactTime.Of(new ExactDecimal(total.Sign < 0, BigInteger.Abs(total), -fraction.Length, 0), 9);
    }

    private static bool Digits(ref ReadOnlySpan<byte> rest, int count, out int value)
    {
        value = 0;
        if (rest.Length < count) return false;
        for (var i = 0; i < count; i++)
        {
            if (rest[i] is < (byte)'0' or > (byte)'9') return false;
            value = value * 10 + rest[i] - '0';
        }

        rest = rest[count..];
        return true;
    }

    private static bool Skip(ref ReadOnlySpan<byte> rest, char c)
    {
        if (rest.IsEmpty || rest[0] != c) return false;
        rest = rest[1..];
        return true;
    }
}
