using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Replays;

namespace MonitorSim.Stops;

/// <summary>SS1 or SS2 by ramp (variant r): |v| - (v0 - deceleration·max(0, c_n - t_s - delay)) vs tolerance, where |v| > standstill.</summary>
internal sealed class RampMeasures : Measures
{
    private readonly Measured _velocity;
    private readonly Constant _standstill, _deceleration;
    private readonly Constant? _timeLimit;
    private readonly long _delay;
    private bool _hasStarted;
    private Reading? _startSpeed;

    /// <param name="axis">The axis.</param>
    /// <param name="deceleration">Of the ramp, SI per nanosecond.</param>
    /// <param name="tolerance">How far the speed may lie above it.</param>
    /// <param name="delay">From the beginning of the stop to that of the ramp, ns.</param>
    /// <param name="timeLimit">The longest that the stop may take, s; null: not limited.</param>
    public RampMeasures(AxisChannels axis, Constant deceleration, Constant tolerance, long delay, Constant? timeLimit)
    {
        (_velocity, _standstill, _deceleration, _delay, _timeLimit) = (axis.Velocity!, axis.Standstill, deceleration, delay, timeLimit);
        Sides = [new("ramp", _velocity.Unit, tolerance), .. TimeLimit.Sides(timeLimit)];
        Needs = _velocity.Both;
    }

    public override IReadOnlyList<Side> Sides { get; }

    public override IReadOnlyList<Channel> Needs { get; }

    public override void Forget() => (_hasStarted, _startSpeed) = (false, null);

    public override void LetGo() => _startSpeed = _startSpeed?.Held();

    public override void Carry(Checkpoint checkpoint) => (_hasStarted, _startSpeed) = (checkpoint.Of(_hasStarted), checkpoint.Of(_startSpeed));

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        if (!_hasStarted) (_hasStarted, _startSpeed) = (true, _velocity.IsPresent(cycle.Sample) ? _velocity.Largest(cycle.Sample) : null);
        var elapsed = cycle.Time - watch.RequestedAt;
        if (_timeLimit is not null) comparisons[1].Make(Reading.OfDuration(elapsed));
        if (!_velocity.IsPresent(cycle.Sample) || _startSpeed is not { } startSpeed) return;
        var speed = _velocity.Largest(cycle.Sample);
        if (Reading.Compare(speed, _standstill) <= 0) return;
        comparisons[0].Make(speed.Minus(startSpeed).Plus(_deceleration, Math.Max(0, elapsed - _delay)));
    }
}

/// <summary>The side that limits how long a stop may take.</summary>
internal static class TimeLimit
{
    public static IEnumerable<Side> Sides(Constant? limit) => limit is null ? [] : [new("timeLimit", "s", limit) { IgnoresDelay = true }];
}
