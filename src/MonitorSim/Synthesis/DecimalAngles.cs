namespace MonitorSim.Synthesis;

/// <summary>Sine and cosine in decimals: the same digits on every machine, which those of mathematical libraries need not be.</summary>
internal static class DecimalAngles
{
    /// <summary>2π.</summary>
    public const decimal Turn = 6.2831853071795864769252867666m;

    /// <summary>Sine and cosine of so many turns, to about 27 digits; exact at quarters of a turn.</summary>
    public static (decimal Sine, decimal Cosine) SineAndCosine(decimal turns)
    {
        var quarters = (turns - Math.Floor(turns)) * 4;
        var quadrant = (int)quarters;
        var rest = quarters - quadrant;

        // The series are short up to an eighth of a turn; beyond it the angle is counted from the other end of the quadrant.
        var beyond = rest > 0.5m;
        var angle = (beyond ? 1 - rest : rest) * (Turn / 4);
        var (sine, cosine) = (Series(angle, angle, 2), Series(1, angle, 1));
        if (beyond) (sine, cosine) = (cosine, sine);
        return quadrant switch
        {
            0 => (sine, cosine),
            1 => (cosine, -sine),
            2 => (-sine, -cosine),
            _ => (-cosine, sine),
        };
    }

    /// <summary>first - first·x²/(n·(n + 1)) + …, until a term is below the last digit.</summary>
    private static decimal Series(decimal first, decimal x, int n)
    {
        decimal sum = 0;
        for (var term = first; term != 0; n += 2)
        {
            sum += term;
            term = -term * x * x / (n * (n + 1));
        }

        return sum;
    }
}
