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
    /// <remarks>
    /// <para>Equation: v_k = (p_k - p_(k-m)) / (t_k - t_(k-m)), m being samples. Delay m·T/2, white-noise gain sqrt(2)/(m·T) at a steady period T.</para>
    /// <para>Initial condition: none: it has no memory.</para>
    /// <para>Start-up: no value at the first sample; then over as many samples as there are.</para>
    /// <para>Pitfall: the shorter it is, the noisier: one step of the encoder's resolution in one period is a whole resolution/T of speed. It alone is compared exactly, as a quotient of recorded values.</para>
    /// <para>Standard: none; the backward difference of any textbook.</para>
    /// </remarks>
    Difference,
    /// <summary>Mean of the last backward differences.</summary>
    /// <remarks>
    /// <para>Equation: v_k = mean over i = 0..m-1 of (p_(k-i) - p_(k-i-1)) / (t_(k-i) - t_(k-i-1)), m being samples. Delay m·T/2, white-noise gain sqrt(2)/(m·T) at a steady period T.</para>
    /// <para>Initial condition: none: it has no memory beyond its samples.</para>
    /// <para>Start-up: no value at the first sample; then the mean of as many differences as there are.</para>
    /// <para>Pitfall: at a steady period it is the difference over m samples and smooths no better; where the period jitters, short steps count as much as long ones.</para>
    /// <para>Standard: none; the moving average of any textbook.</para>
    /// </remarks>
    MovingAverage,
    /// <summary>Slope, at the newest sample, of the polynomial that fits the last samples best.</summary>
    /// <remarks>
    /// <para>Equation: least squares over the last samples, on their actual times, of a polynomial of the degree; v_k is its derivative at t_k. No delay on motion that is such a polynomial (degree 1: (samples - 1)·T/2 on a steady acceleration).</para>
    /// <para>Initial condition: none: it has no memory beyond its samples.</para>
    /// <para>Start-up: no value at the first sample; then on as many samples as there are, with a lower degree where they are too few.</para>
    /// <para>Pitfall: at the end of its samples it is much noisier than in their middle, and the more so the higher the degree; a step of the position overshoots.</para>
    /// <para>Standard: A. Savitzky, M. J. E. Golay, Anal. Chem. 36 (1964) 1627; end points: P. A. Gorry, Anal. Chem. 62 (1990) 570.</para>
    /// </remarks>
    SavitzkyGolay,
    /// <summary>Backward difference through a first-order low-pass.</summary>
    /// <remarks>
    /// <para>Equation: v_k = v_(k-1) + dt/(tau + dt)·(d_k - v_(k-1)), d_k being the backward difference, dt its step and tau the time. Delay tau + T/2; white-noise gain g·sqrt(2/(2 - g))/T with g = T/(tau + T).</para>
    /// <para>Initial condition: v starts at the first difference, and anew after a missing value.</para>
    /// <para>Start-up: no value at the first sample; the first difference passes unfiltered.</para>
    /// <para>Pitfall: it never forgets wholly: after a jump it takes 3 tau to 95 % and 5 tau to 99 %, and a first difference that is noise is carried along as long.</para>
    /// <para>Standard: none; the first-order lag of any textbook, by backward Euler.</para>
    /// </remarks>
    LowPass,
    /// <summary>Alpha-beta tracking filter: predicts position and rate, corrects both by the residual.</summary>
    /// <remarks>
    /// <para>Equation: r_k = p_k - (x_(k-1) + v_(k-1)·dt); x_k = x_(k-1) + v_(k-1)·dt + alpha·r_k; v_k = v_(k-1) + beta·r_k/dt. Delay T·(alpha/beta - 1/2); white-noise gain sqrt(2·beta²/(alpha·(4 - 2·alpha - beta)))/T.</para>
    /// <para>Initial condition: v starts at the first difference, x at its newer position; both anew after a missing value.</para>
    /// <para>Start-up: no value at the first sample; the first difference passes unfiltered.</para>
    /// <para>Pitfall: the gains are for one period: where it changes, so do delay and noise. A beta that is high for its alpha rings.</para>
    /// <para>Standard: T. R. Benedict, G. W. Bordner, IRE Trans. AC-7 (1962) 27; P. R. Kalata, IEEE Trans. AES-20 (1984) 174, for choosing the gains.</para>
    /// </remarks>
    AlphaBeta,
}
