namespace MonitorSim.Tuning;

/// <summary>How an axis comes to a stand from the moment the drive acts: the last link of a <see cref="StoppingChain"/>. A closed form or a simulated stop can stand here.</summary>
public interface IStopping
{
    /// <summary>Time to standstill, s; it must not fall with rising speed.</summary>
    /// <param name="speed">Speed when the drive acts, m/s or rad/s, >= 0.</param>
    double Time(double speed);

    /// <summary>Way to standstill, m or rad; it must not fall with rising speed.</summary>
    /// <param name="speed">Speed when the drive acts, m/s or rad/s, >= 0.</param>
    double Distance(double speed);

    /// <summary>The highest speed from there on; a load may drive the axis on before anything brakes it.</summary>
    /// <param name="speed">Speed when the drive acts, m/s or rad/s, >= 0.</param>
    double HighestSpeed(double speed) => speed;

    /// <summary>The same stop with so many times the decelerating force; null where nothing can be said about it.</summary>
    /// <param name="factor">> 0.</param>
    IStopping? Times(double factor);
}

/// <summary>Constant deceleration: time v/d, way v²/(2·d).</summary>
/// <param name="Deceleration">d, m/s² or rad/s², > 0: the least that is certain in the worst case.</param>
public sealed record ConstantDeceleration(double Deceleration) : IStopping
{
    /// <inheritdoc/>
    public double Time(double speed) => speed / Deceleration;

    /// <inheritdoc/>
    public double Distance(double speed) => speed * speed / (2 * Deceleration);

    /// <inheritdoc/>
    public IStopping Times(double factor) => new ConstantDeceleration(factor * Deceleration);
}
