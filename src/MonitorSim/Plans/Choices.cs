using System.Text.Json.Serialization;

namespace MonitorSim.Plans;

/// <summary>What a missing cell or a gap in time does.</summary>
public enum MissingPolicy
{
    /// <summary>Refuses the recording and lists the places.</summary>
    Reject,
    /// <summary>Holds the last value.</summary>
    Hold,
    /// <summary>Trips every watching monitor that is concerned.</summary>
    Trip,
}

/// <summary>Where an axis's motion comes from after a reaction.</summary>
public enum MotionSource
{
    /// <summary>The recording goes on.</summary>
    Recorded,
    /// <summary>The plant takes over when the reaction takes hold.</summary>
    Simulated,
}

/// <summary>The kind of an axis.</summary>
public enum AxisMotion
{
    /// <summary>m, m/s, N.</summary>
    Linear,
    /// <summary>rad, rad/s, N·m.</summary>
    Rotary,
}

/// <summary>The side of the gear at which a column was recorded.</summary>
public enum RecordedSide
{
    /// <summary>As the axis moves.</summary>
    Load,
    /// <summary>At the motor; carried to the load by gear and feed.</summary>
    Motor,
}

/// <summary>The edge of the acknowledging signal that counts.</summary>
public enum AcknowledgeEdge
{
    /// <summary>True to false.</summary>
    Release,
    /// <summary>False to true.</summary>
    Press,
}

/// <summary>What a trip does, by stop category of IEC 60204-1.</summary>
public enum Reaction
{
    /// <summary>The trip is reported only.</summary>
    None,
    /// <summary>STO: torque off at once (stop category 0).</summary>
    [JsonStringEnumMemberName("stop 0")]
    Stop0,
    /// <summary>SS1: stop, then torque off (stop category 1).</summary>
    [JsonStringEnumMemberName("stop 1")]
    Stop1,
    /// <summary>SS2: stop, then hold (stop category 2).</summary>
    [JsonStringEnumMemberName("stop 2")]
    Stop2,
}

/// <summary>How a stop is watched.</summary>
public enum StopVariant
{
    /// <summary><c>t</c>: it ends after a time; nothing is compared.</summary>
    [JsonStringEnumMemberName("t")]
    Time,
    /// <summary><c>r</c>: the speed is compared with a ramp.</summary>
    [JsonStringEnumMemberName("r")]
    Ramp,
    /// <summary><c>d</c>: the deceleration is compared with a least one.</summary>
    [JsonStringEnumMemberName("d")]
    Deceleration,
}

/// <summary>The direction in which an axis may move.</summary>
public enum Direction
{
    /// <summary>Towards rising positions.</summary>
    Positive,
    /// <summary>Towards falling positions.</summary>
    Negative,
}

/// <summary>From where SDI measures the motion against the permitted direction.</summary>
public enum DirectionReference
{
    /// <summary>The furthest position reached while watching.</summary>
    Furthest,
    /// <summary>The position at the first watching cycle.</summary>
    Start,
}

/// <summary>How a rate that was not recorded is derived.</summary>
public enum EstimatorName
{
    /// <summary>Backward difference over a number of samples.</summary>
    Difference,
    /// <summary>Mean of the last backward differences.</summary>
    MovingAverage,
    /// <summary>Slope at the newest sample of a least-squares polynomial.</summary>
    SavitzkyGolay,
    /// <summary>Backward difference through a first-order low-pass.</summary>
    LowPass,
    /// <summary>Alpha-beta tracking filter.</summary>
    AlphaBeta,
}
