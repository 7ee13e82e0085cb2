using MonitorSim.Channels;
using MonitorSim.Monitors;

namespace MonitorSim.Stops;

/// <summary>SS1 or SS2 by deceleration (variant d): sign(v)·a vs -deceleration while |v| > standstill, shown as the deceleration reached.</summary>
internal sealed class DecelerationMeasures : Measures
{
    private readonly Measured _velocity, _acceleration;
    private readonly Constant _standstill;
    private readonly Constant? _timeLimit;

    public DecelerationMeasures(AxisChannels axis, Constant deceleration, Constant? timeLimit)
    {
        (_velocity, _acceleration, _standstill, _timeLimit) = (axis.Velocity!, axis.Acceleration!, axis.Standstill, timeLimit);
        Sides = [new("deceleration", _acceleration.Unit, deceleration.Negated()) { IsLower = true }, .. TimeLimit.Sides(timeLimit)];
        Needs = [.. _velocity.Both, _acceleration.First];
    }

    public override IReadOnlyList<Side> Sides { get; }

    public override IReadOnlyList<Channel> Needs { get; }

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        var k = cycle.Sample;
        if (_timeLimit is not null) comparisons[1].Make(Reading.OfDuration(cycle.Time - watch.RequestedAt));
        if (!watch.IsWatching || !_velocity.IsPresent(k) || !_acceleration.First.IsPresent(k)) return;
        if (Reading.Compare(_velocity.Largest(k), _standstill) <= 0) return;
        var acceleration = _acceleration.Value(k);
        comparisons[0].Make(Reading.Sign(_velocity.Value(k)) switch { > 0 => acceleration, < 0 => acceleration.Negated(), _ => default });
    }
}
