using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLI, safely-limited increment: trips where a move is longer than an increment, and, after its time, where the axis does not stand still.</summary>
/// <remarks>
/// <para>Equation: side increment, while c_n - c_w is below <see cref="MoveTime"/>: x = |p - p_w| vs increment. Side window, from the first cycle with c_n - c_w at or above it on:
/// x = |p - p_h| vs window. c_w is the first watching cycle. On a modulo axis p is unwrapped; of two recordings the first counts.</para>
/// <para>Initial condition: p_w and p_h are the positions at the first cycle of each phase that has one.</para>
/// <para>Start-up: the first cycle of each phase sets its reference and measures 0.</para>
/// <para>Pitfall: the move's time runs from the beginning of watching, not from the first motion; and p_h is where the axis is when the time is over, moving or not: a move that comes late
/// trips the window.</para>
/// <para>Standard: SLI of IEC 61800-5-2; moveTime and window are the project's own.</para>
/// </remarks>
[Needs(Kind.Position)]
public sealed record Sli : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLI";
    /// <summary>The longest move allowed, m or rad, 0 or more.</summary>
    [Kind(Kind.Position)] public required Quantity Increment { get; init; }
    /// <summary>How long the move may take, s, 0 or more; default without end.</summary>
    [Kind(Kind.Time)] public Quantity? MoveTime { get; init; }
    /// <summary>How far the axis may move after that time, m or rad, 0 or more; default not compared.</summary>
    [Kind(Kind.Position)] public Quantity? Window { get; init; }

    internal override Measures Measure(AxisChannels axis) =>
        new SliMeasures(axis.Travel!, Constant.Of(Increment), MoveTime?.Nanoseconds ?? long.MaxValue, Constant.OfOptional(Window));
}

/// <summary>SLI: the distance from where watching began while the move may last, then the distance from where it should have ended.</summary>
internal sealed class SliMeasures(Measured travel, Constant increment, long moveTime, Constant? window) : Measures
{
    private Reading? _start, _end;

    public override IReadOnlyList<Side> Sides { get; } =
        [new("increment", travel.Unit, increment), .. window is null ? Enumerable.Empty<Side>() : [new("window", travel.Unit, window)]];

    public override IReadOnlyList<Channel> Needs { get; } = [travel.First];

    public override DelayMeaning DelayMatters(int side) => DelayMeaning.Reference;

    public override Channel? Reference => travel.First;

    public override void Forget() => (_start, _end) = (null, null);

    public override void LetGo() => (_start, _end) = (_start?.Held(), _end?.Held());

    public override void Carry(Checkpoint checkpoint) => (_start, _end) = (checkpoint.Of(_start), checkpoint.Of(_end));

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        if (watch.WatchingSince is not { } since || !travel.First.IsPresent(cycle.Sample)) return;
        var position = travel.Value(cycle.Sample);
        if (cycle.Time - since < moveTime)
        {
            _start ??= position;
            comparisons[0].Make(position.Minus(_start.Value).Magnitude());
        }
        else if (window is not null)
        {
            _end ??= position;
            comparisons[1].Make(position.Minus(_end.Value).Magnitude());
        }
    }

    public override bool IsSettled => _end is not null || (moveTime == long.MaxValue && _start is not null);

    public override int FirstAbove(int side, double bound, int from, int until, Watch watch)
    {
        if (side == 0 && _end is not null) return until;
        if (side == 1 && _end is null) return until;
        var reference = (side == 0 ? _start : _end)!.Value.Value;
        return travel.First.FirstOutside(reference - bound, reference + bound, from, until);
    }
}
