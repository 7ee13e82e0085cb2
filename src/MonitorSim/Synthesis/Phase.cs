namespace MonitorSim.Synthesis;

/// <summary>A stretch of motion with constant jerk, and an overlay on top of it where there is one:
/// p(t) = p + v·t + a·t²/2 + j·t³/6, v(t) = v + a·t + j·t²/2, t from its own start.</summary>
/// <remarks>Decimals carry 28 digits, so that a ramp of 1 m/s² sampled every millisecond is exactly k mm/s.</remarks>
/// <param name="Start">When it begins, s.</param>
/// <param name="Duration">s.</param>
/// <param name="Position">At its start, m or rad.</param>
/// <param name="Velocity">At its start, without the overlay (which adds nothing there), m/s or rad/s.</param>
/// <param name="Acceleration">At its start, without the overlay, m/s² or rad/s².</param>
/// <param name="Jerk">m/s³ or rad/s³.</param>
/// <param name="OnTop">What moves on top, or null.</param>
internal readonly record struct Phase(decimal Start, decimal Duration, decimal Position, decimal Velocity, decimal Acceleration, decimal Jerk, IOverlay? OnTop = null)
{
    /// <summary>When it ends, s.</summary>
    public decimal End => Start + Duration;

    /// <summary>The position so long after its start; outside of it, at the nearer end.</summary>
    public decimal PositionAt(decimal t)
    {
        t = Math.Clamp(t, 0, Duration);
        return Position + t * (Velocity + t * (Acceleration / 2 + t * Jerk / 6)) + (OnTop?.PositionAt(t) ?? 0);
    }

    /// <summary>The velocity so long after its start; outside of it, at the nearer end.</summary>
    public decimal VelocityAt(decimal t)
    {
        t = Math.Clamp(t, 0, Duration);
        return Velocity + t * (Acceleration + t * Jerk / 2) + (OnTop?.VelocityAt(t) ?? 0);
    }

    /// <summary>The acceleration so long after its start; outside of it, at the nearer end.</summary>
    public decimal AccelerationAt(decimal t)
    {
        t = Math.Clamp(t, 0, Duration);
        return Acceleration + t * Jerk + (OnTop?.AccelerationAt(t) ?? 0);
    }
}
