using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SOS, safe operating stop: trips where the axis, held under torque, leaves the place where watching began.</summary>
/// <remarks>
/// <para>Equation: side window: x = |p - p_w| vs window, of the first recording, unwrapped on a modulo axis. Side speed, where <see cref="Speed"/> is set: x = |v|, the larger of two
/// recordings, vs speed.</para>
/// <para>Initial condition: p_w is the position at the first watching cycle that has one.</para>
/// <para>Start-up: the first watching cycle sets the reference and measures 0 against the window; the speed is compared from it on.</para>
/// <para>Pitfall: p_w is where the axis is when the delay ends, standing or not: a delay shorter than the stop makes the rest of the way count. Slow drift within the window is never
/// seen, however long it lasts.</para>
/// <para>Standard: SOS of IEC 61800-5-2.</para>
/// </remarks>
[Needs(Kind.Position)]
public sealed record Sos : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SOS";
    /// <summary>The largest distance allowed from where watching began, m or rad, 0 or more.</summary>
    [Kind(Kind.Position)] public required Quantity Window { get; init; }
    /// <summary>The largest speed allowed, m/s or rad/s, 0 or more; default not compared.</summary>
    [Kind(Kind.Velocity), Needs(Kind.Velocity)] public Quantity? Speed { get; init; }

    internal override Measures Measure(AxisChannels axis) => new SosMeasures(axis, Constant.Of(Window), Constant.OfOptional(Speed));
}

/// <summary>SOS: the distance from where watching began, and the speed where it is limited.</summary>
internal sealed class SosMeasures(AxisChannels axis, Constant window, Constant? speed) : Measures
{
    private readonly Measured _travel = axis.Travel!;
    private readonly Measured? _velocity = speed is null ? null : axis.Velocity!;
    private Reading? _reference;

    public override IReadOnlyList<Side> Sides { get; } =
        [new("window", axis.Travel!.Unit, window), .. speed is null ? Enumerable.Empty<Side>() : [new("speed", axis.Velocity!.Unit, speed)]];

    public override IReadOnlyList<Channel> Needs { get; } =
        [axis.Travel!.First, .. speed is null ? Enumerable.Empty<Channel>() : axis.Velocity!.Both];

    public override DelayMeaning DelayMatters(int side) => side == 0 ? DelayMeaning.Reference : DelayMeaning.Start;

    public override Channel? Reference => _travel.First;

    public override void Forget() => _reference = null;

    public override void LetGo() => _reference = _reference?.Held();

    public override void Carry(Checkpoint checkpoint) => _reference = checkpoint.Of(_reference);

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        var k = cycle.Sample;
        if (!watch.IsWatching) return;
        if (_travel.First.IsPresent(k))
        {
            var position = _travel.Value(k);
            _reference ??= position;
            comparisons[0].Make(position.Minus(_reference.Value).Magnitude());
        }

        if (_velocity is not null && _velocity.IsPresent(k)) comparisons[1].Make(_velocity.Largest(k));
    }

    public override bool IsSettled => _reference is not null;

    public override int FirstAbove(int side, double bound, int from, int until, Watch watch)
    {
        if (side == 1) return _velocity!.FirstAbove(bound, signed: false, from, until);
        var reference = _reference!.Value.Value;
        return _travel.First.FirstOutside(reference - bound, reference + bound, from, until);
    }
}
