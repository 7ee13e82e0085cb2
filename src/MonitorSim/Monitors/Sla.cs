using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLA, safely-limited acceleration.</summary>
[Needs(Kind.Acceleration)]
public sealed record Sla : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLA";
    /// <summary>The largest acceleration.</summary>
    [Kind(Kind.Acceleration, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
    /// <summary>A limit of its own while slowing down; null: the same for both.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive), Needs(Kind.Velocity)] public Quantity? Deceleration { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
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
