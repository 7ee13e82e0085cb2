using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLI, safely-limited increment: one move of limited length, then standstill.</summary>
[Needs(Kind.Position)]
public sealed record Sli : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLI";
    /// <summary>The longest move.</summary>
    [Kind(Kind.Position)] public required Quantity Increment { get; init; }
    /// <summary>How long the move may take; null: without end.</summary>
    [Kind(Kind.Time)] public Quantity? MoveTime { get; init; }
    /// <summary>The standstill window after the move; null: nothing is compared then.</summary>
    [Kind(Kind.Position)] public Quantity? Window { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new SliMeasures(axis.Travel!, Constant.Of(Increment), MoveTime?.Nanoseconds ?? long.MaxValue, Constant.OfOptional(Window));
}

/// <summary>SLI: the distance from where watching began while the move may last, then the distance from where it should have ended.</summary>
internal sealed class SliMeasures(Measured travel, Constant increment, long moveTime, Constant? window) : Measures
{
    private int _start = -1, _end = -1;

    public override IReadOnlyList<Side> Sides { get; } =
        [new("increment", travel.Unit, increment), .. window is null ? Enumerable.Empty<Side>() : [new("window", travel.Unit, window)]];

    public override IReadOnlyList<Channel> Needs { get; } = [travel.First];

    public override DelayMeaning DelayMatters(int side) => DelayMeaning.Reference;

    public override Channel? Reference => travel.First;

    public override void Forget() => (_start, _end) = (-1, -1);

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        var (position, k) = (travel.First, cycle.Sample);
        if (watch.WatchingSince is not { } since || !position.IsPresent(k)) return;
        if (cycle.Time - since < moveTime)
        {
            if (_start < 0) _start = k;
            comparisons[0].Make(Reading.Of(position, k).Minus(position, _start).Magnitude());
        }
        else if (window is not null)
        {
            if (_end < 0) _end = k;
            comparisons[1].Make(Reading.Of(position, k).Minus(position, _end).Magnitude());
        }
    }

    public override bool IsSettled => _end >= 0 || (moveTime == long.MaxValue && _start >= 0);

    public override int FirstAbove(int side, double bound, int from, int until, Watch watch)
    {
        if (side == 0 && _end >= 0) return until;
        if (side == 1 && _end < 0) return until;
        var reference = travel.First.Value(side == 0 ? _start : _end);
        return travel.First.FirstOutside(reference - bound, reference + bound, from, until);
    }
}
