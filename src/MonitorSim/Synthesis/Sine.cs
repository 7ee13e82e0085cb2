namespace MonitorSim.Synthesis;

/// <summary>A swing that begins where it turns: v(t) = V·sin(2πft), p(t) = V/(2πf)·(1 - cos(2πft)).</summary>
/// <param name="Speed">V, m/s or rad/s.</param>
/// <param name="Frequency">f, Hz.</param>
internal sealed record Sine(decimal Speed, decimal Frequency) : IOverlay
{
    public decimal PositionAt(decimal t) => Speed / (DecimalAngles.Turn * Frequency) * (1 - DecimalAngles.SineAndCosine(Frequency * t).Cosine);

    public decimal VelocityAt(decimal t) => Speed * DecimalAngles.SineAndCosine(Frequency * t).Sine;

    public decimal AccelerationAt(decimal t) => Speed * DecimalAngles.Turn * Frequency * DecimalAngles.SineAndCosine(Frequency * t).Cosine;
}
