namespace MonitorSim.Tuning;

/// <summary>Finds where something that holds up to a value stops holding.</summary>
internal static class Largest
{
    /// <summary>The largest double >= 0 at which it holds; null where it does not hold at 0, infinity where it always does.</summary>
    /// <param name="holds">Holds up to some value and not above.</param>
    public static double? Value(Func<double, bool> holds)
    {
        if (!holds(0)) return null;
        return holds(double.MaxValue) ? double.PositiveInfinity : Between(0, double.MaxValue, holds);
    }

    /// <summary>The largest double from one at which it holds up to one at which it does not.</summary>
    /// <param name="from">It holds here; >= 0.</param>
    /// <param name="until">It does not hold here.</param>
    /// <param name="holds">Holds up to some value and not above.</param>
    public static double Between(double from, double until, Func<double, bool> holds)
    {
        // Doubles of 0 or more are ordered as their bits: halving those ends at neighbours, whatever the size.
        var (yes, no) = (BitConverter.DoubleToInt64Bits(from), BitConverter.DoubleToInt64Bits(until));
        while (no - yes > 1)
        {
            var middle = yes + (no - yes) / 2;
            if (holds(BitConverter.Int64BitsToDouble(middle))) yes = middle;
            else no = middle;
        }

        return BitConverter.Int64BitsToDouble(yes);
    }

    /// <summary>The smallest double > 0 at which it holds; null where it never does.</summary>
    /// <param name="holds">Holds from some value on.</param>
    public static double? Smallest(Func<double, bool> holds) =>
        Value(value => value == 0 || !holds(value)) is { } below && double.IsFinite(below) ? Math.BitIncrement(below) : null;

    /// <summary>The largest whole number from one that holds up to another at which it holds.</summary>
    /// <param name="from">It holds here.</param>
    /// <param name="until">The last that is asked.</param>
    /// <param name="holds">Holds up to some number and not above.</param>
    public static long Whole(long from, long until, Func<long, bool> holds)
    {
        if (holds(until)) return until;
        while (until - from > 1)
        {
            var middle = from + (until - from) / 2;
            if (holds(middle)) from = middle;
            else until = middle;
        }

        return from;
    }
}
