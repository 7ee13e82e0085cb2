using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Motion;
using MonitorSim.Plans;
using MonitorSim.Stops;

namespace MonitorSim.Replays;

/// <summary>Where the axes of a replay move: on their recordings, or as their plants do from a reaction on; and the faults of both.</summary>
internal sealed class Motions
{
    private readonly SampleTimes _times;
    private readonly bool _holdsMissing;
    private readonly IReadOnlyList<Injection> _faults;
    private readonly SortedDictionary<string, SimulatedAxis> _axes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (AxisState State, int BrakeEdges)> _before = [];

    /// <param name="plan">The plan.</param>
    /// <param name="times">Of the samples.</param>
    /// <param name="faults">What goes wrong.</param>
    /// <exception cref="InputException">A fault of an axis that is not there, or of a drive while the motion is recorded.</exception>
    public Motions(Plan plan, SampleTimes times, IReadOnlyList<Injection> faults)
    {
        (_times, _faults, _holdsMissing) = (times, faults, plan.Missing == MissingPolicy.Hold);
        InjectionChecks.Require(plan, faults);
        if (plan.Motion != MotionSource.Simulated) return;
        foreach (var (name, axis) in plan.Axes)
            _axes[name] = new(plan, axis, times, faults.OfType<MachineInjection>().Where(fault => fault.Axis == name).Select(fault => fault.Fault));
    }

    /// <summary>Whether every value is the recorded one, so that it is known in advance.</summary>
    public bool AreRecorded => _axes.Count == 0 && _faults.Count == 0;

    /// <summary>What goes wrong.</summary>
    public IReadOnlyList<Injection> Faults => _faults;

    /// <summary>What goes wrong with channels.</summary>
    public IReadOnlyList<Injection> ChannelFaults => [.. _faults.OfType<ChannelInjection>()];

    /// <summary>The axes that may leave their recordings.</summary>
    public IReadOnlyDictionary<string, SimulatedAxis> Axes => _axes;

    /// <summary>What stands for the recordings of an axis.</summary>
    public Func<Kind, bool, Channel, Channel> StandIn(string axis) => (kind, isSecond, recorded) =>
    {
        var channel = _axes.TryGetValue(axis, out var simulated) ? simulated.Stand(kind, isSecond, recorded) : recorded;
        foreach (var fault in _faults.OfType<ChannelInjection>())
            if (fault.Axis == axis && fault.Channel == kind && fault.IsSecond == isSecond) channel = new FaultyChannel(channel, _times, fault.Fault, _holdsMissing);
        return channel;
    };

    /// <summary>Makes the samples up to one ready to be read.</summary>
    public void TakeUpTo(int sample, IReadOnlyDictionary<string, AxisChannels> channels, List<ReplayEvent> events)
    {
        foreach (var (name, axis) in _axes)
        {
            var hadLeft = axis.LeftAt is not null;
            axis.TakeUpTo(sample, channels[name]);
            if (!hadLeft && axis.LeftAt is { } left) events.Add(new(Seconds.Of(left), name, "motion", "simulated from here on"));
        }
    }

    /// <summary>Takes what the reactor commands at the end of a cycle.</summary>
    public void EndCycle(in Cycle cycle, IReadOnlyDictionary<string, AxisReactor> reactors)
    {
        foreach (var (name, axis) in _axes)
        {
            var reactor = reactors[name];
            var (state, edges) = _before.GetValueOrDefault(name);
            for (var e = edges; e < reactor.BrakeEdges.Count; e++) axis.CommandBrake(reactor.BrakeEdges[e].Time, reactor.BrakeEdges[e].On);
            if (state != reactor.State) axis.Command(cycle.Time, reactor.State, reactor.HasReacted, reactor.Stops.HasBrake);
            _before[name] = (reactor.State, reactor.BrakeEdges.Count);
        }
    }
}
