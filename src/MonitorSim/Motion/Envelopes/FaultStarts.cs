using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Motion.Envelopes;

/// <summary>Where the axis is at every sample of a recording and what watches it there: all that a fault can begin from.</summary>
internal sealed class FaultStarts
{
    private readonly EnvelopeQuestion _question;
    private readonly Plant _plant;
    private readonly Func<Reaction, StopProgram> _programOf;
    private readonly long[] _times;
    private readonly double[] _positions, _velocities;
    private readonly IReadOnlyList<Watcher>[] _watchers;

    private FaultStarts(EnvelopeQuestion question, Engine engine)
    {
        var (plan, trace, name) = (question.Plan, question.Trace, question.Axis);
        var axis = plan.Axes[name];
        _question = question;
        _plant = Plant.Of(axis);
        _times = trace.Times.ToArray();
        var (times, channels) = (new SampleTimes(_times), engine.Channels[name]);
        var period = Math.Max(1, (long)(trace.Sampling?.Median ?? 1));
        var response = new ResponseTimes(plan, axis, period);
        var programs = Enum.GetValues<Reaction>().ToDictionary(reaction => reaction, reaction => new Lazy<StopProgram>(() => StopProgram.Of(plan, axis, reaction, period / 1e9)));
        _programOf = reaction => programs[reaction].Value;
        _positions = Values(channels.Travel, missing: 0);
        _velocities = Values(channels.Velocity, missing: double.NaN);
        var watches = axis.Monitors.Select(monitor => new RecordedWatch(engine.Runs.First(run => run.Axis == name && !run.IsStop && run.Name == monitor.Name), monitor, engine, times)).ToList();
        _watchers = new IReadOnlyList<Watcher>[_times.Length];
        for (var k = 0; k < _times.Length; k++)
            _watchers[k] = [.. watches.SelectMany(watch => watch.At(k).Select(watcher => response.Complete(watcher, watch.Run)))];
    }

    public int Count => _times.Length;

    public static FaultStarts Of(EnvelopeQuestion question, CancellationToken cancel)
    {
        var (plan, name) = (question.Plan, question.Axis);
        PlanChecks.Require(plan);
        if (!plan.Axes.ContainsKey(name)) throw new InputException(new Problem("axis", $"there is no axis '{name}'", ClosestName.Advice(name, [.. plan.Axes.Keys], "axis")));
        var recorded = plan with { Motion = MotionSource.Recorded };
        var engine = Replay.RunEngine(recorded, new Inputs(recorded, question.Trace), cancel);
        foreach (var run in engine.Runs) run.Finish(engine.Done);
        if (engine.Channels[name].Velocity is null)
            throw new InputException(new Problem($"axes.{name}.channels", "there is no speed, nor a position to derive it from", "a fault begins from a speed: name a column of speeds or positions"));
        return new(question, engine);
    }

    /// <summary>The fault at one sample, where a runaway may go either way the worse of the two; null where there is no speed.</summary>
    public EnvelopePoint? Point(int sample)
    {
        if (double.IsNaN(_velocities[sample])) return null;
        if (_question.Faults.OfType<RunawayFault>().FirstOrDefault() is not { } runaway) return Summary(sample, 0, Motion(sample, 0));
        if (runaway.Direction != RunawayDirection.WithMotion) return OneWay(runaway.Direction == RunawayDirection.Positive ? 1 : -1);
        var (up, down) = (OneWay(1), OneWay(-1));
        return IsWorse(up, down) ? up : down;

        EnvelopePoint OneWay(int direction) => Summary(sample, direction, Motion(sample, direction));
    }

    /// <summary>The motion of a fault at one sample.</summary>
    public StopResult Motion(int sample, int direction)
    {
        var condition = MachineCondition.Of(_question.Faults, _plant, _velocities[sample]);
        if (direction != 0) condition = condition with { Runaway = direction };
        return new StopRun(_plant, _programOf, condition, _watchers[sample], _question.Horizon)
            .From(new(0, _positions[sample], _velocities[sample], 0, 0), _question.Demand);
    }

    private static bool IsWorse(EnvelopePoint a, EnvelopePoint b)
    {
        if (a.Time is null != b.Time is null) return a.Time is null;
        if (a.Time is null && a.IsDetected != b.IsDetected) return !a.IsDetected;
        return a.Distance > b.Distance;
    }

    private EnvelopePoint Summary(int sample, int direction, StopResult motion) =>
        new(sample, Seconds.Of(_times[sample]), direction, _velocities[sample], motion.Time, motion.Distance, motion.PeakSpeed, motion.Energy, motion.Fall, motion.Drop,
            motion.DetectedBy?.Monitor, motion.DetectedBy?.Side, motion.DetectedAt, motion.ActedAt, motion.OffAt, motion.BrakedAt, motion.Overruns);

    private double[] Values(Measured? quantity, double missing)
    {
        var values = new double[_times.Length];
        for (var k = 0; k < values.Length; k++) values[k] = quantity is not null && quantity.First.IsPresent(k) ? quantity.First.Value(k) : missing;
        return values;
    }
}
