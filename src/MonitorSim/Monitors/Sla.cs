using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLA, safely-limited acceleration: trips where the acceleration exceeds a limit.</summary>
/// <remarks>
/// <para>Equation: side upper: x = |a|, the larger of two recordings, vs limit. With <see cref="Deceleration"/> each side has its own quadrant: upper only where a·v is 0 or more, and
/// side deceleration only where a·v is below 0: x = |a| vs deceleration. <see cref="Signed"/>: a of the first recording, on both sides.</para>
/// <para>Initial condition: none.</para>
/// <para>Start-up: compared from the first watching cycle on; an acceleration derived from a recorded speed has no value at the first sample, one derived twice at the first two.</para>
/// <para>Pitfall: differences of differences of a position are mostly noise: smooth, or expect trips that the machine never saw. Close to standstill the sign of v is noise too: the
/// quadrants alternate, and every change breaks the row that a filter waits for.</para>
/// <para>Standard: SLA of IEC 61800-5-2, which lets acceleration and deceleration have limits of their own.</para>
/// </remarks>
[Needs(Kind.Acceleration)]
public sealed record Sla : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLA";
    /// <summary>The largest acceleration allowed, m/s² or rad/s², 0 or more unless signed.</summary>
    [Kind(Kind.Acceleration, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
    /// <summary>The largest deceleration allowed, m/s² or rad/s², more than 0; default the limit, in both quadrants.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive), Needs(Kind.Velocity)] public Quantity? Deceleration { get; init; }
    /// <summary>Whether the quantity itself is compared instead of its magnitude; then limits may be negative; default false.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis) => Deceleration is null
        ? new RangeMeasures(axis.Acceleration!, null, Constant.Of(Limit), Signed)
        : new SlaMeasures(axis.Acceleration!, axis.Velocity!, Constant.Of(Limit), Constant.Of(Deceleration), Signed);
}

/// <summary>SLA with a limit of its own for slowing down: each compared only in its own quadrant.</summary>
internal sealed class SlaMeasures(Measured acceleration, Measured velocity, Constant limit, Constant deceleration, bool signed) : Measures
{
    public override IReadOnlyList<Side> Sides { get; } =
        [Side.Upper(acceleration.Unit, limit), new("deceleration", acceleration.Unit, deceleration)];

    public override IReadOnlyList<Channel> Needs { get; } =
        [.. signed ? [acceleration.First] : acceleration.Both, velocity.First];

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        var k = cycle.Sample;
        if (!watch.IsWatching || !velocity.First.IsPresent(k)) return;
        if (signed ? !acceleration.First.IsPresent(k) : !acceleration.IsPresent(k)) return;
        var slowing = Reading.Sign(acceleration.Value(k)) * Reading.Sign(velocity.Value(k)) < 0;
        comparisons[slowing ? 1 : 0].Make(signed ? acceleration.Value(k) : acceleration.Largest(k));
    }

    public override bool IsSettled => true;
}
