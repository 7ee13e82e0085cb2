namespace MonitorSim.Synthesis;

/// <summary>Exponential and logarithm in decimals: the same digits on every machine.</summary>
internal static class DecimalExponential
{
    // e^64 is near the largest decimal.
    private const decimal Largest = 64;

    /// <summary>e^x to about 25 digits; 0 for x below -64.</summary>
    /// <param name="x">At most 64.</param>
    public static decimal Exp(decimal x)
    {
        if (x < -Largest) return 0;
        if (x < 0) return 1 / Exp(-x);

        // The series is short for small arguments; every halving is undone by a square.
        var halvings = 0;
        for (; x > 0.125m; x /= 2) halvings++;
        decimal sum = 0, term = 1;
        for (var n = 1; term != 0; n++)
        {
            sum += term;
            term = term * x / n;
        }

        for (; halvings > 0; halvings--) sum *= sum;
        return sum;
    }

    /// <summary>ln x to about 25 digits.</summary>
    /// <param name="x">1 to e^64.</param>
    public static decimal Log(decimal x)
    {
        // Halley's step triples the digits: 16, 48.
        var log = (decimal)Math.Log((double)x);
        for (var i = 0; i < 2; i++) log += 2 * (x - Exp(log)) / (x + Exp(log));
        return log;
    }
}
