namespace MonitorSim.Plans;

/// <summary>What a quantity in a plan measures. Those of motion take linear or rotary units after their axis.</summary>
public enum Kind
{
    /// <summary>A duration.</summary>
    Time,
    /// <summary>A sampling rate.</summary>
    Rate,
    /// <summary>m or rad, after the axis.</summary>
    Position,
    /// <summary>m/s or rad/s, after the axis.</summary>
    Velocity,
    /// <summary>m/s² or rad/s², after the axis.</summary>
    Acceleration,
    /// <summary>m/s³ or rad/s³, after the axis.</summary>
    Jerk,
    /// <summary>N or N·m, after the unit of the axis's torque channel.</summary>
    Torque,
    /// <summary>°C.</summary>
    Temperature,
    /// <summary>A difference of temperatures: 2 K is the same as 2 °C.</summary>
    TemperatureDifference,
    /// <summary>The unit or offset of a recorded channel, at the side where it was recorded.</summary>
    Channel,
    /// <summary>A difference of a channel's values, at the load side.</summary>
    ChannelDifference,
    /// <summary>Length per revolution.</summary>
    Feed,
    /// <summary>kg or kg·m², after the axis.</summary>
    Inertia,
    /// <summary>N or N·m, after the axis.</summary>
    Force,
    /// <summary>N·s/m or N·m·s/rad, after the axis.</summary>
    Viscous,
    /// <summary>Ω.</summary>
    Resistance,
    /// <summary>H.</summary>
    Inductance,
    /// <summary>V·s.</summary>
    FluxLinkage,
    /// <summary>J.</summary>
    Energy,
}

/// <summary>The legal range of a quantity.</summary>
public enum Allowed
{
    /// <summary>0 or more.</summary>
    NonNegative,
    /// <summary>More than 0.</summary>
    Positive,
    /// <summary>Any number.</summary>
    Any,
    /// <summary>0 or more, or any number where the monitor is <c>signed</c>.</summary>
    NonNegativeUnlessSigned,
}

/// <summary>Says what a quantity of a plan measures and which values are legal; reader, checks and schema all go by it.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class KindAttribute(Kind kind, Allowed allowed = Allowed.NonNegative) : Attribute
{
    /// <summary>What it measures.</summary>
    public Kind Kind { get; } = kind;
    /// <summary>The legal range.</summary>
    public Allowed Allowed { get; } = allowed;
}
