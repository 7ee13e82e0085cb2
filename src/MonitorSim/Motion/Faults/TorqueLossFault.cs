namespace MonitorSim.Motion.Faults;

/// <summary>The drive gives no torque any more and takes part in no stop. There is no braking by short circuit either, until torque is commanded off.</summary>
public sealed record TorqueLossFault : MachineFault
{
    /// <inheritdoc/>
    public override string Fault => "torqueLoss";
}
