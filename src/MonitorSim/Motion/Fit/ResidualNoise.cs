namespace MonitorSim.Motion.Fit;

/// <summary>How large the noise is that residuals show, and how many of them count as independent.</summary>
/// <remarks>Where neighbours go together (correlation r beyond what chance does, 2/√n), n of them tell no more than n·(1 - r)/(1 + r) independent ones, as for a
/// first-order autoregression: standard errors grow by √((1 + r)/(1 - r)).</remarks>
internal sealed class ResidualNoise
{
    /// <param name="residuals">In order of time.</param>
    /// <param name="follows">Whether a residual directly follows the one before it.</param>
    /// <param name="parameters">How many parameters were fitted.</param>
    public ResidualNoise(double[] residuals, Func<int, bool> follows, int parameters)
    {
        var squares = residuals.Sum(e => e * e);
        double products = 0;
        for (var k = 1; k < residuals.Length; k++)
            if (follows(k)) products += residuals[k] * residuals[k - 1];
        Neighbours = squares > 0 ? products / squares : 0;
        IsWhite = Neighbours <= 2 / Math.Sqrt(residuals.Length);
        var share = IsWhite ? 1 : (1 - Neighbours) / (1 + Neighbours);
        DegreesOfFreedom = Math.Max(1, residuals.Length * share - parameters);
        Deviation = Math.Sqrt(squares / Math.Max(1, residuals.Length - parameters) / share);
        Rms = Math.Sqrt(squares / residuals.Length);
        Max = residuals.Max(Math.Abs);
    }

    /// <summary>The correlation of neighbours.</summary>
    public double Neighbours { get; }

    /// <summary>Whether neighbours are as independent as those of noise.</summary>
    public bool IsWhite { get; }

    /// <summary>Independent residuals less parameters, at least 1.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The standard deviation that an independent residual would need to make parameters as uncertain as they are.</summary>
    public double Deviation { get; }

    /// <summary>Root of the mean square.</summary>
    public double Rms { get; }

    /// <summary>The largest magnitude.</summary>
    public double Max { get; }

    /// <summary>A parameter with its interval.</summary>
    public FittedParameter Parameter(string name, double value, double variance, string unit)
    {
        var error = Deviation * Math.Sqrt(variance);
        var half = LeastSquares.Quantile(DegreesOfFreedom) * error;
        return new(name, value, error, value - half, value + half, unit);
    }
}
