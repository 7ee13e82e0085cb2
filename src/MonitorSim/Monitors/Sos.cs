using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SOS, safe operating stop: the axis must stay where it is, under torque.</summary>
[Needs(Kind.Position)]
public sealed record Sos : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SOS";
    /// <summary>The largest distance from where watching began.</summary>
    [Kind(Kind.Position)] public required Quantity Window { get; init; }
    /// <summary>The largest speed; null: not compared.</summary>
    [Kind(Kind.Velocity), Needs(Kind.Velocity)] public Quantity? Speed { get; init; }

    internal override Measures Measure(AxisChannels axis) => new SosMeasures(axis, Constant.Of(Window), Constant.OfOptional(Speed));
}

/// <summary>SOS: the distance from where watching began, and the speed where it is limited.</summary>
internal sealed class SosMeasures(AxisChannels axis, Constant window, Constant? speed) : Measures
{
    private readonly Measured _travel = axis.Travel!;
    private readonly Measured? _velocity = speed is null ? null : axis.Velocity!;
    private int _reference = -1;

    public override IReadOnlyList<Side> Sides { get; } =
        [new("window", axis.Travel!.Unit, window), .. speed is null ? Enumerable.Empty<Side>() : [new("speed", axis.Velocity!.Unit, speed)]];

    public override IReadOnlyList<Channel> Needs { get; } =
        [axis.Travel!.First, .. speed is null ? Enumerable.Empty<Channel>() : axis.Velocity!.Both];

    public override DelayMeaning DelayMatters(int side) => side == 0 ? DelayMeaning.Reference : DelayMeaning.Start;

    public override Channel? Reference => _travel.First;

    public override void Forget() => _reference = -1;

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        var k = cycle.Sample;
        if (!watch.IsWatching) return;
        if (_travel.First.IsPresent(k))
        {
            if (_reference < 0) _reference = k;
            comparisons[0].Make(Reading.Of(_travel.First, k).Minus(_travel.First, _reference).Magnitude());
        }

        if (_velocity is not null && _velocity.IsPresent(k)) comparisons[1].Make(_velocity.Largest(k));
    }

    public override bool IsSettled => _reference >= 0;

    public override int FirstAbove(int side, double bound, int from, int until, Watch watch)
    {
        if (side == 1) return _velocity!.FirstAbove(bound, signed: false, from, until);
        var reference = _travel.First.Value(_reference);
        return _travel.First.FirstOutside(reference - bound, reference + bound, from, until);
    }
}
