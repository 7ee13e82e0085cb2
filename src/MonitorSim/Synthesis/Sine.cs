namespace MonitorSim.Synthesis;

/// <summary>A swing that begins where it turns: v(t) = V·sin(2πft), p(t) = V/(2πf)·(1 - cos(2πft)).</summary>
/// <param name="Speed">V, m/s or rad/s; 0: no swing.</param>
/// <param name="Frequency">f, Hz.</param>
internal readonly record struct Sine(decimal Speed, decimal Frequency)
{
    public decimal PositionAt(decimal t) =>
        Speed == 0 ? 0 : Speed / (DecimalAngles.Turn * Frequency) * (1 - DecimalAngles.SineAndCosine(Frequency * t).Cosine);

    public decimal VelocityAt(decimal t) => Speed == 0 ? 0 : Speed * DecimalAngles.SineAndCosine(Frequency * t).Sine;

    public decimal AccelerationAt(decimal t) => Speed == 0 ? 0 : Speed * DecimalAngles.Turn * Frequency * DecimalAngles.SineAndCosine(Frequency * t).Cosine;
}
