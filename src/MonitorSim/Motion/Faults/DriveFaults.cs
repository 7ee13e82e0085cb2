namespace MonitorSim.Motion.Faults;

/// <summary>The drive gives its full torque, until it takes part in a stop or its torque is off.</summary>
/// <remarks>Alone it is a wrong set point: the drive still follows the ramp of a stop. With <see cref="RampIgnored"/> only torque off ends it.</remarks>
public sealed record Runaway : Fault
{
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

/// <summary>The drive gives no torque any more and takes part in no stop. There is no braking by short circuit either, until torque is commanded off.</summary>
public sealed record LossOfTorque : Fault;

/// <summary>The drive does not follow the ramp of a stop, nor holds after it: it goes on as before until its torque is off.</summary>
public sealed record RampIgnored : Fault;
