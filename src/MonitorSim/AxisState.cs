using System.Text.Json.Serialization;

namespace MonitorSim;

/// <summary>What an axis is doing, in rising severity.</summary>
public enum AxisState
{
    /// <summary>Moving freely under its monitors.</summary>
    [JsonStringEnumMemberName("Running")]
    Running,
    /// <summary>Held under torque and watched for standstill (SOS).</summary>
    [JsonStringEnumMemberName("Holding")]
    Holding,
    /// <summary>Stopping, then held under torque (SS2, stop category 2).</summary>
    [JsonStringEnumMemberName("StoppingToHold")]
    StoppingToHold,
    /// <summary>Stopping, then torque off (SS1, stop category 1).</summary>
    [JsonStringEnumMemberName("StoppingToOff")]
    StoppingToOff,
    /// <summary>Torque off (STO, stop category 0).</summary>
    [JsonStringEnumMemberName("TorqueOff")]
    TorqueOff,
}
