namespace MonitorSim;

/// <summary>What an axis is doing, in rising severity.</summary>
public enum AxisState
{
    /// <summary>Moving freely under its monitors.</summary>
    Running,
    /// <summary>Held under torque and watched for standstill (SOS).</summary>
    Holding,
    /// <summary>Stopping, then held under torque (SS2, stop category 2).</summary>
    StoppingToHold,
    /// <summary>Stopping, then torque off (SS1, stop category 1).</summary>
    StoppingToOff,
    /// <summary>Torque off (STO, stop category 0).</summary>
    TorqueOff,
}
