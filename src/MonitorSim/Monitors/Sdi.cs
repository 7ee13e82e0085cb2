using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SDI, safe direction: trips where the axis moves against the permitted direction by more than a tolerance.</summary>
/// <remarks>
/// <para>Equation: positive permitted: x = p_r - p vs tolerance, p_r being the furthest position reached while watching (<see cref="Reference"/> start: p_w). Negative permitted: x = p - p_r,
/// p_r the lowest position. On a modulo axis p is unwrapped; of two recordings the first counts.</para>
/// <para>Initial condition: p_r = p_w, the position at the first watching cycle that has one.</para>
/// <para>Start-up: the first watching cycle sets the reference and measures 0.</para>
/// <para>Pitfall: measured from the furthest position, noise and backlash count from their highest peak ever: the tolerance has to exceed their whole span. Measured from the start, an axis
/// that has gone far may come back all the way.</para>
/// <para>Standard: SDI of IEC 61800-5-2.</para>
/// </remarks>
[Needs(Kind.Position)]
public sealed record Sdi : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SDI";
    /// <summary>The permitted direction: positive or negative.</summary>
    public required Direction Allow { get; init; }
    /// <summary>How far it may move against the permitted direction, m or rad, 0 or more.</summary>
    [Kind(Kind.Position)] public required Quantity Tolerance { get; init; }
    /// <summary>From where that is measured: furthest or start; default furthest.</summary>
    public DirectionReference Reference { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new SdiMeasures(axis.Travel!, Allow == Direction.Negative, Reference == DirectionReference.Start, Constant.Of(Tolerance));
}

/// <summary>SDI: the way back from the furthest position reached, or from the start; mirrored where negative is permitted.</summary>
internal sealed class SdiMeasures(Measured travel, bool mirrored, bool fromStart, Constant tolerance) : Measures
{
    private Reading? _reference;

    public override IReadOnlyList<Side> Sides { get; } = [Side.Upper(travel.Unit, tolerance)];

    public override IReadOnlyList<Channel> Needs { get; } = [travel.First];

    public override DelayMeaning DelayMatters(int side) => DelayMeaning.Reference;

    public override Channel? Reference => travel.First;

    public override void Forget() => _reference = null;

    public override void LetGo() => _reference = _reference?.Held();

    public override void Carry(Checkpoint checkpoint) => _reference = checkpoint.Of(_reference);

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        if (!watch.IsWatching || !travel.First.IsPresent(cycle.Sample)) return;
        var position = travel.Value(cycle.Sample);
        _reference ??= position;
        var back = _reference.Value.Minus(position);
        if (mirrored) back = back.Negated();
        if (!fromStart && Reading.Sign(back) < 0)
        {
            _reference = position;
            back = position.Minus(position);
        }

        comparisons[0].Make(back);
    }

    // The furthest position reached goes on changing.
    public override bool IsSettled => fromStart && _reference is not null;

    public override int FirstAbove(int side, double bound, int from, int until, Watch watch)
    {
        var reference = _reference!.Value.Value;
        return mirrored
            ? travel.First.FirstOutside(double.NegativeInfinity, reference + bound, from, until)
            : travel.First.FirstOutside(reference - bound, double.PositiveInfinity, from, until);
    }
}
