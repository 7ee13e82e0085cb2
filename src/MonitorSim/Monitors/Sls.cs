using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLS, safely-limited speed: trips where the speed exceeds a limit.</summary>
/// <remarks>
/// <para>Equation: side upper: x = |v|, the larger of two recordings (<see cref="Signed"/>: v of the first), vs L, the limit. With <see cref="Levels"/>, L is the laxest limit
/// in force: that of the first level whose condition holds, and that of every level given up at a cycle c_s for a stricter one while c_n - c_s is below the delay. Side
/// approach: x = |v| - (|v(t_a)| - deceleration·(c_n - t_a)) vs tolerance, compared while arming or while a stricter level is pending, and only where |v| is more than the
/// limit to come.</para>
/// <para>Initial condition: none for the upper side; the ramp of the approach starts at |v(t_a)|, t_a being the cycle at which the limit was asked for.</para>
/// <para>Start-up: the upper side is compared from the end of the delay on, the approach from the request on. Where no level holds, there is no request.</para>
/// <para>Pitfall: without a speed at t_a the approach is not compared at all (a derived speed has none at the first sample); and once the approach has tripped, the limit itself is not
/// reported before an acknowledgement.</para>
/// <para>Standard: SLS of IEC 61800-5-2; more than one limit and the time to reach a lower one are left to the maker there, levels and approach are the project's own.</para>
/// </remarks>
[Needs(Kind.Velocity)]
[ExactlyOneOf("limit", "levels")]
public sealed record Sls : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLS";
    /// <summary>The largest speed allowed, m/s or rad/s, 0 or more unless signed; either this or <see cref="Levels"/>.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Limit { get; init; }
    /// <summary>Limits by condition, one or more: the first whose condition holds is chosen; default none.</summary>
    public IReadOnlyList<SpeedLevel>? Levels { get; init; }
    /// <summary>Compares the way down to a limit to come; default not compared.</summary>
    public Approach? Approach { get; init; }
    /// <summary>Whether the quantity itself is compared instead of its magnitude; then limits may be negative; default false.</summary>
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
    /// <summary>The largest speed allowed, m/s or rad/s, 0 or more unless signed.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
}

/// <summary>A ramp that the speed must keep under until a limit takes force.</summary>
public sealed record Approach
{
    /// <summary>The ramp's deceleration, m/s² or rad/s², more than 0.</summary>
    [Kind(Kind.Acceleration, Allowed.Positive)] public required Quantity Deceleration { get; init; }
    /// <summary>How far the speed may lie above the ramp, m/s or rad/s, 0 or more.</summary>
    [Kind(Kind.Velocity)] public required Quantity Tolerance { get; init; }
}

/// <summary>SLS: the speed against the limit in force, and against the ramp towards a limit to come.</summary>
internal sealed class SlsMeasures(Measured velocity, IReadOnlyList<Constant> limits, bool hasLevels, bool signed, Constant? ramp, Constant? tolerance)
    : Measures
{
    // Levels given up for a stricter one stay in force for the delay.
    private readonly List<(int Level, long GivenUpAt)> _pending = [];
    private int _chosen = -1;
    private long _askedAt;
    private Reading? _askedSpeed;

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

    public override void LetGo() => _askedSpeed = _askedSpeed?.Held();

    public override void Carry(Checkpoint checkpoint)
    {
        checkpoint.List(_pending, level => (checkpoint.Of(level.Level), checkpoint.Of(level.GivenUpAt)));
        (_chosen, _askedAt, _askedSpeed) = (checkpoint.Of(_chosen), checkpoint.Of(_askedAt), checkpoint.Of(_askedSpeed));
    }

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        Choose(cycle, watch);
        var inForce = InForce();
        var k = cycle.Sample;
        if (!IsPresent(k)) return;
        if (watch.IsWatching) comparisons[0].Make(Speed(k), inForce);
        var isStricterToCome = !watch.IsWatching || limits[inForce].Exact > limits[_chosen].Exact;
        if (ramp is not null && isStricterToCome) Approach(cycle, ref comparisons[1]);
    }

    public override bool IsSettled => _pending.Count == 0;

    // Without a stricter level to come the approach is not compared.
    public override int FirstAbove(int side, double bound, int from, int until, Watch watch) =>
        side == 0 ? velocity.FirstAbove(bound, signed, from, until) : until;

    public override Ranking? Ranking(int side) => side == 0 ? velocity.Ranking(signed) : null;

    private void Choose(in Cycle cycle, Watch watch)
    {
        if (watch.Choice != _chosen)
        {
            if (_chosen >= 0 && limits[watch.Choice].Exact < limits[_chosen].Exact) _pending.Add((_chosen, cycle.Time));
            (_chosen, _askedAt) = (watch.Choice, cycle.Time);
            _askedSpeed = ramp is not null && IsPresent(cycle.Sample) ? Speed(cycle.Sample) : null;
        }

        if (_pending.Count > 0) Expire(cycle.Time, watch.Delay);
    }

    private void Expire(long now, long delay) => _pending.RemoveAll(level => now - level.GivenUpAt >= delay);

    /// <summary>The laxest limit in force counts; of equal ones the chosen one, else the one given up last.</summary>
    private int InForce()
    {
        var laxest = _chosen;
        for (var k = _pending.Count - 1; k >= 0; k--)
            if (limits[_pending[k].Level].Exact > limits[laxest].Exact) laxest = _pending[k].Level;
        return laxest;
    }

    // The ramp starts at the speed at which the limit was asked for.
    private void Approach(in Cycle cycle, ref Comparison comparison)
    {
        if (_askedSpeed is not { } asked) return;
        var speed = Speed(cycle.Sample);
        if (Reading.Compare(speed, limits[_chosen]) <= 0) return;
        comparison.Make(speed.Minus(asked).Plus(ramp!, cycle.Time - _askedAt));
    }

    // A signed limit bounds motion one way only, and so does the ramp towards it.
    private Reading Speed(int sample) => signed ? velocity.Value(sample) : velocity.Largest(sample);

    private bool IsPresent(int sample) => signed ? velocity.First.IsPresent(sample) : velocity.IsPresent(sample);
}
