namespace MonitorSim.Synthesis;

/// <summary>What moves on top of a phase's constant jerk. At its start it adds neither way nor speed.</summary>
internal interface IOverlay
{
    /// <summary>The way it adds so long after its start, m or rad.</summary>
    decimal PositionAt(decimal t);

    /// <summary>The speed it adds, m/s or rad/s.</summary>
    decimal VelocityAt(decimal t);

    /// <summary>The acceleration it adds, m/s² or rad/s².</summary>
    decimal AccelerationAt(decimal t);
}
