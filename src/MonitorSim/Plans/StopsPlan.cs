using System.Text.Json.Serialization;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>How an axis stops. STO must be there; SOS where SS2 is; each stop that a reaction, a request or a group can demand.</summary>
public sealed record StopsPlan
{
    /// <summary>Torque off.</summary>
    [JsonPropertyName("STO")] public StoPlan? Sto { get; init; }
    /// <summary>Stop, then torque off.</summary>
    [JsonPropertyName("SS1")] public RampStopPlan? Ss1 { get; init; }
    /// <summary>Stop, then hold.</summary>
    [JsonPropertyName("SS2")] public RampStopPlan? Ss2 { get; init; }
    /// <summary>What holding is watched for.</summary>
    [JsonPropertyName("SOS")] public SosPlan? Sos { get; init; }
    /// <summary>The holding brake.</summary>
    [JsonPropertyName("SBC")] public SbcPlan? Sbc { get; init; }
}

/// <summary>STO: torque off, optionally checked.</summary>
public sealed record StoPlan
{
    /// <summary>Demands the stop while it holds.</summary>
    public Condition? Request { get; init; }
    /// <summary>The largest torque that may be left; null: not checked.</summary>
    [Kind(Kind.Torque), Needs(Kind.Torque)] public Quantity? Residual { get; init; }
    /// <summary>From torque off until the check begins; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Grace { get; init; }
}

/// <summary>SS1 or SS2.</summary>
public sealed record RampStopPlan
{
    /// <summary>Demands the stop while it holds.</summary>
    public Condition? Request { get; init; }
    /// <summary>How it is watched.</summary>
    [AlwaysWritten] public StopVariant Variant { get; init; }
    /// <summary>When a stop by time ends (variant t).</summary>
    [Kind(Kind.Time)] public Quantity? Time { get; init; }
    /// <summary>The ramp (r) or the least deceleration (d).</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public Quantity? Deceleration { get; init; }
    /// <summary>From the beginning of the stop to that of the ramp or of the check (r, d); default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Delay { get; init; }
    /// <summary>How far the speed may lie above the ramp (r).</summary>
    [Kind(Kind.Velocity)] public Quantity? Tolerance { get; init; }
    /// <summary>How long too little deceleration may last (d); default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Filter { get; init; }
    /// <summary>How long standstill must last for the stop to end (r, d); default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Settle { get; init; }
    /// <summary>The longest that the stop may take (r, d); null: not limited.</summary>
    [Kind(Kind.Time)] public Quantity? TimeLimit { get; init; }
}

/// <summary>SOS as a stop: what holding is watched for.</summary>
public sealed record SosPlan
{
    /// <summary>Demands holding while it holds.</summary>
    public Condition? Request { get; init; }
    /// <summary>The largest distance from the position at which holding began.</summary>
    [Kind(Kind.Position), Needs(Kind.Position)] public Quantity? Window { get; init; }
    /// <summary>The largest speed; null: not compared.</summary>
    [Kind(Kind.Velocity), Needs(Kind.Velocity)] public Quantity? Speed { get; init; }
}

/// <summary>SBC: the holding brake.</summary>
public sealed record SbcPlan
{
    /// <summary>How long the brake takes to hold; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Apply { get; init; }
    /// <summary>How far the axis may move with the brake applied; null: not checked.</summary>
    [Kind(Kind.Position), Needs(Kind.Position)] public Quantity? Window { get; init; }
}
