using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>The quantities of an axis. A rate that is not given is derived from the one before it by a backward difference.</summary>
public sealed record ChannelsPlan
{
    /// <summary>Position.</summary>
    public ChannelPlan? Position { get; init; }
    /// <summary>Velocity; else derived from position.</summary>
    public ChannelPlan? Velocity { get; init; }
    /// <summary>Acceleration; else derived from velocity.</summary>
    public ChannelPlan? Acceleration { get; init; }
    /// <summary>Torque or force, after its unit.</summary>
    public ChannelPlan? Torque { get; init; }
    /// <summary>Temperature.</summary>
    public ChannelPlan? Temperature { get; init; }
}

/// <summary>One quantity of an axis: recorded (<see cref="Column"/>) or derived (<see cref="From"/>).
/// Its value is raw · scale, turned by invert, plus offset, in its unit.</summary>
public sealed record ChannelPlan
{
    /// <summary>The recorded column.</summary>
    public string? Column { get; init; }
    /// <summary>The unit of raw · scale; null where the recording states it.</summary>
    [Kind(Kind.Channel)] public Unit? Unit { get; init; }
    /// <summary>Where it was recorded.</summary>
    public RecordedSide Side { get; init; }
    /// <summary>A factor on the raw value; default 1.</summary>
    public Fraction? Scale { get; init; }
    /// <summary>Whether the sign is turned.</summary>
    public bool Invert { get; init; }
    /// <summary>Added after scale and invert.</summary>
    [Kind(Kind.Channel, Allowed.Any)] public Quantity? Offset { get; init; }
    /// <summary>A second recording of the same quantity.</summary>
    public SecondChannelPlan? Second { get; init; }
    /// <summary>The channel it is derived from: <c>position</c> for velocity, <c>velocity</c> for acceleration.</summary>
    public string? From { get; init; }
    /// <summary>How it is derived.</summary>
    public EstimatorPlan? Estimator { get; init; }
}

/// <summary>A second recording of a channel, compared with the first. What is not said is as with the first.</summary>
/// <remarks>
/// <para>Equation: x = |x1 - x2| vs tolerance, through <see cref="Time"/> as its filter; positions of a modulo axis by the shortest way round. A monitor of its own, always requested, called <c>position two channels</c> and the like.</para>
/// <para>Initial condition: none.</para>
/// <para>Start-up: compared from the first cycle on at which both have a value.</para>
/// <para>Pitfall: limits look at both: upper limits of magnitudes, ramps and standstill at the larger, lower limits at the smaller; everything that has a sign, and what is derived, at the first alone.</para>
/// <para>Standard: none of its own; cross-comparison of two channels is a usual diagnostic measure of ISO 13849-1.</para>
/// </remarks>
public sealed record SecondChannelPlan
{
    /// <summary>The recorded column.</summary>
    public required string Column { get; init; }
    /// <summary>The largest difference allowed, the channel's unit, 0 or more.</summary>
    [Kind(Kind.ChannelDifference)] public required Quantity Tolerance { get; init; }
    /// <summary>How long a larger difference may last, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Time { get; init; }
    /// <summary>Its unit.</summary>
    [Kind(Kind.Channel)] public Unit? Unit { get; init; }
    /// <summary>Where it was recorded.</summary>
    public RecordedSide? Side { get; init; }
    /// <summary>A factor on the raw value.</summary>
    public Fraction? Scale { get; init; }
    /// <summary>Whether the sign is turned.</summary>
    public bool? Invert { get; init; }
    /// <summary>Added after scale and invert.</summary>
    [Kind(Kind.Channel, Allowed.Any)] public Quantity? Offset { get; init; }
    /// <summary>What a difference does; default stop 0.</summary>
    public Reaction? Reaction { get; init; }
}

/// <summary>How a rate is derived, causally, from the samples so far.</summary>
public sealed record EstimatorPlan
{
    /// <summary>Which estimator; default difference.</summary>
    [AlwaysWritten] public EstimatorName Name { get; init; }
    /// <summary>How many samples it reaches back (difference, movingAverage) or uses (savitzkyGolay), 1 or more; default 1 (difference alone).</summary>
    public int? Samples { get; init; }
    /// <summary>The polynomial's degree (savitzkyGolay), 1 or more, less than samples.</summary>
    public int? Degree { get; init; }
    /// <summary>The time constant (lowPass), s, more than 0.</summary>
    [Kind(Kind.Time, Allowed.Positive)] public Quantity? Time { get; init; }
    /// <summary>The position gain (alphaBeta), 0 &lt; alpha &lt; 1.</summary>
    public double? Alpha { get; init; }
    /// <summary>The rate gain (alphaBeta), 0 &lt; beta &lt; 4 - 2·alpha.</summary>
    public double? Beta { get; init; }
}
