namespace MonitorSim.Motion.Faults;

/// <summary>The drive gives its full torque, until it takes part in a stop or its torque is off.</summary>
/// <remarks>Alone it is a wrong set point: the drive still follows the ramp of a stop. With <see cref="IgnoredRampFault"/> only torque off ends it.</remarks>
public sealed record RunawayFault : MachineFault
{
    /// <inheritdoc/>
    public override string Fault => "runaway";
    /// <summary>Which way.</summary>
    public RunawayDirection Direction { get; init; }
}

/// <summary>Which way a drive runs away.</summary>
public enum RunawayDirection
{
    /// <summary>The way that it moves; from standstill with the load, and without one towards rising positions.</summary>
    WithMotion,
    /// <summary>Towards rising positions.</summary>
    Positive,
    /// <summary>Towards falling positions.</summary>
    Negative,
}
