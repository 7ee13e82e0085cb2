using Fractions;

namespace MonitorSim.Tests.Standards;

/// <summary>Least squares without rounding: the weights by which a polynomial fitted to points answers at time 0.</summary>
/// <remarks>Normal equations A'A c = A'y with A_kj = t_k^j, solved by elimination in fractions. It shares nothing with the estimators.</remarks>
internal static class RationalLeastSquares
{
    /// <summary>The weight of each point in coefficient <paramref name="power"/> of the polynomial: 0 for its value at time 0, 1 for its slope there.</summary>
    public static Fraction[] Weights(IReadOnlyList<Fraction> times, int degree, int power)
    {
        var n = degree + 1;
        var powers = times.Select(t => Powers(t, 2 * n)).ToArray();

        // [A'A | e_power]: its solution c gives the weights A·c, as A'A is symmetric.
        var rows = Enumerable.Range(0, n).Select(i =>
            Enumerable.Range(0, n).Select(j => powers.Aggregate(Fraction.Zero, (sum, p) => sum + p[i + j])).Append(i == power ? Fraction.One : Fraction.Zero).ToArray()).ToArray();
        for (var i = 0; i < n; i++)
        {
            // A'A is positive definite: no pivot is 0.
            var pivot = rows[i][i];
            for (var j = 0; j <= n; j++) rows[i][j] /= pivot;
            for (var other = 0; other < n; other++)
            {
                if (other == i) continue;
                var factor = rows[other][i];
                for (var j = 0; j <= n; j++) rows[other][j] -= factor * rows[i][j];
            }
        }

        return [.. powers.Select(p => Enumerable.Range(0, n).Aggregate(Fraction.Zero, (sum, j) => sum + p[j] * rows[j][n]))];
    }

    private static Fraction[] Powers(Fraction t, int count)
    {
        var powers = new Fraction[count];
        powers[0] = Fraction.One;
        for (var j = 1; j < count; j++) powers[j] = powers[j - 1] * t;
        return powers;
    }
}
