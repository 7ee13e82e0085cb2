namespace MonitorSim.Motion.Fit;

/// <summary>A coast-down with viscous and Coulomb friction: u(t) = u0·e^(-kt) - c·(1 - e^(-kt))/k with k = b/J and c = Tc/J, until it stands.</summary>
internal readonly record struct CoastDownModel(double Start, double Viscous, double Coulomb)
{
    /// <summary>The speed.</summary>
    public double At(double t) => Start * Math.Exp(-Viscous * t) - Coulomb * t * Mean(Viscous * t);

    /// <summary>How the speed changes with each parameter: start, viscous, Coulomb.</summary>
    public (double Start, double Viscous, double Coulomb) SlopesAt(double t)
    {
        var x = Viscous * t;
        return (Math.Exp(-x), -t * Start * Math.Exp(-x) - Coulomb * t * t * MeanSlope(x), -t * Mean(x));
    }

    /// <summary>(1 - e^(-x))/x; near 0 its series.</summary>
    private static double Mean(double x) => Math.Abs(x) < 1e-3 ? 1 - x / 2 * (1 - x / 3 * (1 - x / 4 * (1 - x / 5))) : (1 - Math.Exp(-x)) / x;

    /// <summary>Its derivative.</summary>
    private static double MeanSlope(double x) => Math.Abs(x) < 1e-2
        ? -0.5 + x / 3 - x * x / 8 + x * x * x / 30 - x * x * x * x / 144
        : (Math.Exp(-x) * (1 + x) - 1) / (x * x);
}
