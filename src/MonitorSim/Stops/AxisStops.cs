using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim.Stops;

/// <summary>How one axis stops: its stops as they are watched, and when each of them ends.</summary>
internal sealed class AxisStops
{
    private readonly AxisChannels _channels;
    private readonly StopsPlan _plan;
    private readonly MonitorRun?[] _watched;

    public AxisStops(AxisChannels channels, StopsPlan plan)
    {
        (_channels, _plan) = (channels, plan);
        Sto = plan.Sto?.Residual is not { } residual ? null : Run("STO", plan.Sto.Grace?.Nanoseconds ?? 0, 0, Reaction.None,
            () => new RangeMeasures(channels.Torque!, null, Constant.Of(residual), signed: false), hasDelay: true);
        Ss1 = Ramp("SS1", plan.Ss1);
        Ss2 = Ramp("SS2", plan.Ss2);
        Sos = plan.Sos?.Window is not { } window ? null : Run("SOS", 0, 0, Reaction.Stop0,
            () => new SosMeasures(channels, Constant.Of(window), Constant.OfOptional(plan.Sos.Speed)), hasDelay: false);
        Sbc = plan.Sbc?.Window is not { } slip ? null : Run("SBC", plan.Sbc.Apply?.Nanoseconds ?? 0, 0, Reaction.None,
            () => new SosMeasures(channels, Constant.Of(slip), null), hasDelay: true);
        _watched = [Sto, Ss1, Ss2, Sos, Sbc];
    }

    public MonitorRun? Sto { get; }
    public MonitorRun? Ss1 { get; }
    public MonitorRun? Ss2 { get; }
    public MonitorRun? Sos { get; }
    public MonitorRun? Sbc { get; }

    public bool HasBrake => _plan.Sbc is not null;

    public long Apply => _plan.Sbc?.Apply?.Nanoseconds ?? 0;

    /// <summary>The stops that compare something.</summary>
    public IEnumerable<MonitorRun> Watched => _watched.OfType<MonitorRun>();

    public RampStopPlan? RampOf(AxisState state) => state switch
    {
        AxisState.StoppingToOff => _plan.Ss1,
        AxisState.StoppingToHold => _plan.Ss2,
        _ => null,
    };

    private MonitorRun? Ramp(string name, RampStopPlan? plan)
    {
        if (plan is null || plan.Variant == StopVariant.Time) return null;
        var limit = Constant.OfOptional(plan.TimeLimit);
        var delay = plan.Delay?.Nanoseconds ?? 0;
        return plan.Variant == StopVariant.Ramp
            ? Run(name, 0, 0, Reaction.Stop0,
                () => new RampMeasures(_channels, Constant.PerNanosecond(plan.Deceleration!), Constant.Of(plan.Tolerance!), delay, limit), hasDelay: false)
            : Run(name, delay, plan.Filter?.Nanoseconds ?? 0, Reaction.Stop0,
                () => new DecelerationMeasures(_channels, Constant.Of(plan.Deceleration!), limit), hasDelay: true);
    }

    private MonitorRun Run(string name, long delay, long filter, Reaction reaction, Func<Measures> measures, bool hasDelay) =>
        new(_channels.Axis, name, name, measures, delay, filter, reaction) { IsStop = true, DependsOnReplay = true, HasDelay = hasDelay };
}
