namespace MonitorSim.Motion.Fit;

/// <summary>What has to be known before fitted numbers are used.</summary>
internal static class FitWarnings
{
    private const double Alike = 0.95;

    public static IEnumerable<string> Of(IReadOnlyList<FittedParameter> parameters, LeastSquares fit, ResidualNoise noise)
    {
        for (var a = 0; a < parameters.Count; a++)
            for (var b = a + 1; b < parameters.Count; b++)
                if (fit.Correlation(a, b) is var together && Math.Abs(together) > Alike)
                    yield return FormattableString.Invariant($"the recording can hardly tell {parameters[a].Name} and {parameters[b].Name} apart (correlation of their errors {together:0.000}): trust neither alone; other speeds, accelerations or directions would tell");
        if (fit.Condition > 30) yield return FormattableString.Invariant($"condition number {fit.Condition:0}: beyond 30 some parameters are hard to tell apart");
        foreach (var parameter in parameters.Where(parameter => parameter.Lower <= 0 && parameter.Upper >= 0 && !MayBeNegative(parameter)))
            yield return $"{parameter.Name} cannot be told from 0 with this recording";
        foreach (var parameter in parameters.Where(parameter => parameter.Upper < 0 && !MayBeNegative(parameter)))
            yield return $"{parameter.Name} comes out below 0, which it cannot be: torque or speed may have the wrong sign, or the model lacks something";
        if (!noise.IsWhite)
            yield return FormattableString.Invariant($"what is left over is no noise (correlation of neighbours {noise.Neighbours:0.00}): the model lacks something; uncertainties are widened by {Math.Sqrt((1 + noise.Neighbours) / (1 - noise.Neighbours)):0.0} for it, and tell nothing about what is lacking");
    }

    // What holds the load may come out with either sign.
    private static bool MayBeNegative(FittedParameter parameter) => parameter.Name is "load" or "coulomb forward" or "coulomb backward";

    /// <summary>"a, b and c".</summary>
    public static string List(IEnumerable<string> names)
    {
        string[] all = [.. names];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }
}
