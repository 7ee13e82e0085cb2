namespace MonitorSim.Motion.Faults;

/// <summary>The drive does not follow the ramp of a stop, nor holds after it: it goes on as before until its torque is off.</summary>
public sealed record IgnoredRampFault : MachineFault
{
    /// <inheritdoc/>
    public override string Fault => "rampIgnored";
}
