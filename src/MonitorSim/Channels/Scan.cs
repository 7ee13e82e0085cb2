using System.Numerics;

namespace MonitorSim.Channels;

/// <summary>Scans a column for the first value that matters, several values at a time.</summary>
internal static class Scan
{
    /// <summary>The index of the first value that is not within low to high, both included (NaN is not); the length if there is none.</summary>
    public static int FirstNotWithin(ReadOnlySpan<double> values, double low, double high)
    {
        var k = 0;
        if (Vector.IsHardwareAccelerated)
        {
            var (lows, highs) = (new Vector<double>(low), new Vector<double>(high));
            for (; k <= values.Length - Vector<double>.Count; k += Vector<double>.Count)
            {
                var value = new Vector<double>(values[k..]);
                if (!Vector.GreaterThanOrEqualAll(value, lows) || !Vector.LessThanOrEqualAll(value, highs)) break;
            }
        }

        while (k < values.Length && values[k] >= low && values[k] <= high) k++;
        return k;
    }

    /// <summary>The index of the first value that is neither below low nor above high (NaN is neither); the length if there is none.</summary>
    public static int FirstNotBeyond(ReadOnlySpan<double> values, double low, double high)
    {
        var k = 0;
        if (Vector.IsHardwareAccelerated)
        {
            var (lows, highs) = (new Vector<double>(low), new Vector<double>(high));
            for (; k <= values.Length - Vector<double>.Count; k += Vector<double>.Count)
            {
                var value = new Vector<double>(values[k..]);
                if (Vector.BitwiseOr(Vector.LessThan(value, lows), Vector.GreaterThan(value, highs)) != Vector<long>.AllBitsSet) break;
            }
        }

        while (k < values.Length && (values[k] < low || values[k] > high)) k++;
        return k;
    }
}
