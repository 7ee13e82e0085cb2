namespace MonitorSim.Synthesis;

/// <summary>Roots in decimals: the same digits on every machine, to within a few units of the 27th.</summary>
internal static class DecimalRoots
{
    /// <summary>The square root of a number that is not negative.</summary>
    public static decimal Square(decimal x)
    {
        if (x <= 0) return 0;
        var root = Start(x, Math.Sqrt((double)x));

        // Newton's step doubles the digits: 16, 32.
        for (var i = 0; i < 3; i++) root = (root + x / root) / 2;
        return root;
    }

    /// <summary>The cube root of a number that is not negative.</summary>
    public static decimal Cube(decimal x)
    {
        if (x <= 0) return 0;
        var root = Start(x, Math.Cbrt((double)x));
        for (var i = 0; i < 3; i++) root = (2 * root + x / root / root) / 3;
        return root;
    }

    private static decimal Start(decimal x, double root) => (decimal)root is var start and > 0 ? start : x;
}
