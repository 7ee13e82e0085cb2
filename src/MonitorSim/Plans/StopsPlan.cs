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

/// <summary>STO, safe torque off: takes the torque away at once, and reports torque that is left.</summary>
/// <remarks>
/// <para>Equation: side upper, in TorqueOff: x = |q|, the larger of two recordings, vs residual, from the first cycle with c_n - t_s at or above <see cref="Grace"/> on. Its trip has reaction none.</para>
/// <para>Initial condition: t_s is the cycle at which the axis went to TorqueOff.</para>
/// <para>Start-up: with grace 0 the first cycle of TorqueOff is compared already.</para>
/// <para>Pitfall: the end of a request does not end TorqueOff: that takes an acknowledgement. A recording of a machine that was not stopped goes on under torque, which the residual then reports.</para>
/// <para>Standard: STO of IEC 61800-5-2, stop category 0 of IEC 60204-1.</para>
/// </remarks>
public sealed record StoPlan
{
    /// <summary>Demands the stop while it holds; default never.</summary>
    public Condition? Request { get; init; }
    /// <summary>The largest torque that may be left, N or N·m, 0 or more; default not checked.</summary>
    [Kind(Kind.Torque), Needs(Kind.Torque)] public Quantity? Residual { get; init; }
    /// <summary>How long torque may take to go, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Grace { get; init; }
}

/// <summary>SS1 or SS2, safe stop: the axis is made to stop, which is watched by its variant; then torque goes (SS1) or SOS holds it (SS2).</summary>
/// <remarks>
/// <para>Equation: side ramp (variant r), where |v| is more than standstill: x = |v| - (v0 - deceleration·max(0, c_n - t_s - delay)) vs tolerance. Side deceleration (d), where |v| is more than
/// standstill and c_n - t_s is at or above delay: x = sign(v)·a vs -deceleration, through <see cref="Filter"/>, shown as the deceleration reached and the one demanded. Side timeLimit
/// (r, d): x = c_n - t_s vs timeLimit. A violation leads to TorqueOff at once. The stop ends at the first cycle with c_n - t_s at or above time (t), or where |v| has been at or
/// below standstill for settle (r, d).</para>
/// <para>Initial condition: t_s is the cycle at which the stop begins, v0 = |v(t_s)|, of two recordings the larger.</para>
/// <para>Start-up: it is compared, and may end, in the cycle in which it begins. Without a speed at t_s the ramp is not compared.</para>
/// <para>Pitfall: variant t compares nothing: an axis that does not slow down at all is found only when torque goes. In variant d a filter makes timeLimit wait as well. A demand that is not more
/// severe than the present state begins no new ramp.</para>
/// <para>Standard: SS1-t, -r, -d and SS2-t, -r, -d of IEC 61800-5-2, stop categories 1 and 2 of IEC 60204-1; settle and timeLimit are the project's own.</para>
/// </remarks>
public sealed record RampStopPlan
{
    /// <summary>Demands the stop while it holds; default never.</summary>
    public Condition? Request { get; init; }
    /// <summary>How it is watched: t, r or d; default t.</summary>
    [AlwaysWritten] public StopVariant Variant { get; init; }
    /// <summary>When the stop ends (variant t), s, 0 or more.</summary>
    [Kind(Kind.Time)] public Quantity? Time { get; init; }
    /// <summary>The ramp (r) or the least deceleration (d), m/s² or rad/s², more than 0.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public Quantity? Deceleration { get; init; }
    /// <summary>From the beginning of the stop to that of the ramp or of the check (r, d), s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Delay { get; init; }
    /// <summary>How far the speed may lie above the ramp (r), m/s or rad/s, 0 or more.</summary>
    [Kind(Kind.Velocity)] public Quantity? Tolerance { get; init; }
    /// <summary>How long too little deceleration may last (d), s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Filter { get; init; }
    /// <summary>How long standstill must last for the stop to end (r, d), s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Settle { get; init; }
    /// <summary>The longest that the stop may take (r, d), s, 0 or more; default not limited.</summary>
    [Kind(Kind.Time)] public Quantity? TimeLimit { get; init; }
}

/// <summary>SOS, safe operating stop, as a stop: holds the axis under torque, and trips where it leaves its place.</summary>
/// <remarks>
/// <para>Equation: side window, in Holding: x = |p - p_w| vs window, of the first recording, unwrapped on a modulo axis. Side speed, where <see cref="Speed"/> is set: x = |v|, the larger of two
/// recordings, vs speed. A violation leads to TorqueOff at once.</para>
/// <para>Initial condition: p_w is the position at the first cycle of Holding that has one.</para>
/// <para>Start-up: it watches from the cycle in which SS2 ends or holding is demanded, moving or not.</para>
/// <para>Pitfall: an SS2 by time may end while the axis still moves: the rest of the way then counts against the window.</para>
/// <para>Standard: SOS of IEC 61800-5-2, the end of stop category 2 of IEC 60204-1.</para>
/// </remarks>
public sealed record SosPlan
{
    /// <summary>Demands holding while it holds; default never.</summary>
    public Condition? Request { get; init; }
    /// <summary>The largest distance allowed from the position at which holding began, m or rad, 0 or more; it must be given.</summary>
    [Kind(Kind.Position), Needs(Kind.Position)] public Quantity? Window { get; init; }
    /// <summary>The largest speed allowed, m/s or rad/s, 0 or more; default not compared.</summary>
    [Kind(Kind.Velocity), Needs(Kind.Velocity)] public Quantity? Speed { get; init; }
}

/// <summary>SBC, safe brake control: commands the holding brake, and reports a brake that slips.</summary>
/// <remarks>
/// <para>Equation: STO commands it at once, SS1 where it would end; TorqueOff then comes at the first cycle with c_n - t_b at or above <see cref="Apply"/>. Side window, while commanded:
/// x = |p - p_c| vs window, of the first recording, unwrapped on a modulo axis. Its trip has reaction none.</para>
/// <para>Initial condition: t_b is the cycle of the command; p_c is the position at the first cycle with c_n - t_b at or above apply that has one.</para>
/// <para>Start-up: nothing is compared before apply is over; the first cycle after it sets the reference and measures 0.</para>
/// <para>Pitfall: with STO torque goes at once, but the brake only holds after apply: what drops in between is before p_c, and not seen by the window.</para>
/// <para>Standard: SBC of IEC 61800-5-2.</para>
/// </remarks>
public sealed record SbcPlan
{
    /// <summary>How long the brake takes to hold, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Apply { get; init; }
    /// <summary>How far the axis may move with the brake applied, m or rad, 0 or more; default not checked.</summary>
    [Kind(Kind.Position), Needs(Kind.Position)] public Quantity? Window { get; init; }
}
