using MonitorSim.Estimators;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim.Motion.Envelopes;

/// <summary>How long it takes a monitor to know what happened: cycle, age of the input, filter, and the delay of derived rates.</summary>
internal sealed class ResponseTimes
{
    private readonly double _cycle, _inputDelay, _velocityDelay, _accelerationDelay;

    /// <param name="plan">The plan, for its times.</param>
    /// <param name="axis">The axis, for its estimators.</param>
    /// <param name="period">Of the recording, ns: the cycle where the plan has none of its own.</param>
    public ResponseTimes(Plan plan, AxisPlan axis, long period)
    {
        (_cycle, _inputDelay) = (plan.Cycle?.Si ?? period / 1e9, plan.InputDelay?.Si ?? 0);
        _velocityDelay = DelayOf(axis.Channels.Velocity, period);
        _accelerationDelay = DelayOf(axis.Channels.Acceleration, period) + (axis.Channels.Acceleration?.Column is null ? _velocityDelay : 0);
    }

    /// <summary>A limit with the times and the reaction of its monitor.</summary>
    public Watcher Complete(Watcher watcher, MonitorRun run)
    {
        var side = run.Sides.FirstOrDefault(side => side.Name == watcher.Side);
        var unit = side?.Unit ?? "";
        var late = unit is "m/s" or "rad/s" ? _velocityDelay : unit is "m/s²" or "rad/s²" ? _accelerationDelay : 0;
        // A run of whole cycles, none shorter than the filter.
        var filter = Math.Ceiling(Math.Round(run.Filter / 1e9 / _cycle, 9)) * _cycle;
        return watcher with { Filter = filter, Response = _cycle + _inputDelay + late, Reaction = run.Reaction, Unit = unit };
    }

    private static double DelayOf(ChannelPlan? channel, long period) =>
        channel?.Column is not null ? 0 : EstimatorFigures.Of(channel?.Estimator ?? new EstimatorPlan(), period).Delay;
}
