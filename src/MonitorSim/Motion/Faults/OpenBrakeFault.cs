namespace MonitorSim.Motion.Faults;

/// <summary>The holding brake does not close when it is commanded. One that has closed already stays closed.</summary>
public sealed record OpenBrakeFault : MachineFault
{
    /// <inheritdoc/>
    public override string Fault => "openBrake";
}
