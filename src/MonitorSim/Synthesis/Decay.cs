namespace MonitorSim.Synthesis;

/// <summary>A speed that dies away: v(t) = -D·(1 - e^(-t/τ)), p(t) = D·τ·(1 - e^(-t/τ)) - D·t.</summary>
/// <param name="Speed">D, m/s or rad/s.</param>
/// <param name="TimeConstant">τ, s.</param>
internal sealed record Decay(decimal Speed, decimal TimeConstant) : IOverlay
{
    public decimal PositionAt(decimal t) => Speed * TimeConstant * (1 - Left(t)) - Speed * t;

    public decimal VelocityAt(decimal t) => -Speed * (1 - Left(t));

    public decimal AccelerationAt(decimal t) => -Speed / TimeConstant * Left(t);

    private decimal Left(decimal t) => DecimalExponential.Exp(-t / TimeConstant);
}
