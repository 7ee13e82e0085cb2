using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLS, safely-limited speed: the speed must not exceed a limit.</summary>
[Needs(Kind.Velocity)]
[ExactlyOneOf("limit", "levels")]
public sealed record Sls : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLS";
    /// <summary>The largest speed allowed; or <see cref="Levels"/>.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Limit { get; init; }
    /// <summary>Limits by condition: the first whose condition holds is chosen.</summary>
    public IReadOnlyList<SpeedLevel>? Levels { get; init; }
    /// <summary>Watches the way down to a limit to come.</summary>
    public Approach? Approach { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis)
    {
        IReadOnlyList<Constant> limits = Levels is null ? [Constant.Of(Limit!)] : [.. Levels.Select(level => Constant.Of(level.Limit))];
        return new SlsMeasures(axis.Velocity!, limits, Levels is not null, Signed,
            Approach is null ? null : Constant.PerNanosecond(Approach.Deceleration), Approach is null ? null : Constant.Of(Approach.Tolerance));
    }
}

/// <summary>One of several limits of SLS.</summary>
public sealed record SpeedLevel
{
    /// <summary>When this limit is chosen.</summary>
    public required Condition When { get; init; }
    /// <summary>The largest speed allowed.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
}

/// <summary>A ramp that the speed must keep under until a limit takes force.</summary>
public sealed record Approach
{
    /// <summary>The ramp's deceleration.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public required Quantity Deceleration { get; init; }
    /// <summary>How far the speed may lie above the ramp.</summary>
    [Kind(Kind.Velocity)] public required Quantity Tolerance { get; init; }
}

/// <summary>SLS: the speed against the limit in force, and against the ramp towards a limit to come.</summary>
internal sealed class SlsMeasures(Measured velocity, IReadOnlyList<Constant> limits, bool hasLevels, bool signed, Constant? ramp, Constant? tolerance)
    : Measures
{
    // Levels given up for a stricter one stay in force for the delay.
    private readonly List<(int Level, long GivenUpAt)> _pending = [];
    private int _chosen = -1, _askedSample;
    private long _askedAt;

    public override IReadOnlyList<Side> Sides { get; } =
        [new("upper", velocity.Unit, limits) { HasLevels = hasLevels },
         .. tolerance is null ? Enumerable.Empty<Side>() : [new("approach", velocity.Unit, tolerance) { IsComparedWhileArming = true }]];

    public override IReadOnlyList<Channel> Needs { get; } = signed ? [velocity.First] : velocity.Both;

    public override DelayMeaning DelayMatters(int side) => hasLevels || side == 1 ? DelayMeaning.Throughout : DelayMeaning.Start;

    public override void Forget()
    {
        _pending.Clear();
        _chosen = -1;
    }

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        Choose(cycle, watch);
        var inForce = InForce();
        var k = cycle.Sample;
        if (signed ? !velocity.First.IsPresent(k) : !velocity.IsPresent(k)) return;
        if (watch.IsWatching) comparisons[0].Make(signed ? velocity.Value(k) : velocity.Largest(k), inForce);
        var isStricterToCome = !watch.IsWatching || limits[inForce].Exact > limits[_chosen].Exact;
        if (ramp is not null && isStricterToCome) Approach(cycle, ref comparisons[1]);
    }

    public override bool IsSettled => _pending.Count == 0;

    // Without a stricter level to come the approach is not compared.
    public override int FirstAbove(int side, double bound, int from, int until, Watch watch) =>
        side == 0 ? velocity.FirstAbove(bound, signed, from, until) : until;

    private void Choose(in Cycle cycle, Watch watch)
    {
        if (watch.Choice != _chosen)
        {
            if (_chosen >= 0 && limits[watch.Choice].Exact < limits[_chosen].Exact) _pending.Add((_chosen, cycle.Time));
            (_chosen, _askedAt, _askedSample) = (watch.Choice, cycle.Time, cycle.Sample);
        }

        var now = cycle.Time;
        _pending.RemoveAll(level => now - level.GivenUpAt >= watch.Delay);
    }

    /// <summary>The laxest limit in force counts; of equal ones the chosen one, else the one given up last.</summary>
    private int InForce()
    {
        var laxest = _chosen;
        for (var k = _pending.Count - 1; k >= 0; k--)
            if (limits[_pending[k].Level].Exact > limits[laxest].Exact) laxest = _pending[k].Level;
        return laxest;
    }

    private void Approach(in Cycle cycle, ref Comparison comparison)
    {
        // The ramp starts at the speed at which the limit was asked for; magnitudes, whatever the sign of the limit.
        if (!velocity.IsPresent(cycle.Sample) || !velocity.IsPresent(_askedSample)) return;
        var speed = velocity.Largest(cycle.Sample);
        if (Reading.Compare(speed, limits[_chosen]) <= 0) return;
        comparison.Make(speed.Minus(velocity.Largest(_askedSample)).Plus(ramp!, cycle.Time - _askedAt));
    }
}
