using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Traces;

namespace MonitorSim;

/// <summary>A replay that is driven sample by sample, for tests of trip logic. It gives the same bits as <see cref="Replay.Run(Plan, Trace, CancellationToken)"/> on the whole
/// recording, all of which it keeps; see <see cref="EndlessReplay"/> for one that keeps nothing.</summary>
/// <remarks>A number stands for the shortest decimal that reads back as it: 10.3 means ten point three. A plan must state every unit, as there is no
/// recording that could; and with <c>"missing": "trip"</c> it must state the gap, since the median step is not known in advance.</remarks>
public sealed class ReplaySession
{
    private readonly Plan _plan;
    private readonly SampleFeed _feed;

    /// <summary>Begins a replay.</summary>
    /// <exception cref="InputException">The plan is wrong, or trips on gaps without saying what a gap is.</exception>
    public ReplaySession(Plan plan) => (_plan, _feed) = (plan, new SampleFeed(plan));

    /// <summary>The columns of numbers that every sample must bring.</summary>
    public IEnumerable<string> Columns => _feed.Inputs.Columns;

    /// <summary>The trips of all cycles so far: axis, monitor, side and cycle time in ns.</summary>
    public IReadOnlyList<(string Axis, string Monitor, string Side, long Time)> Trips =>
        [.. _feed.Engine.Trips.Select(note => (note.Monitor.Axis, note.Monitor.Name, note.Side?.Name ?? "invalid input", note.Cycle.Time))];

    /// <summary>The state of an axis after the latest cycle.</summary>
    /// <exception cref="KeyNotFoundException">There is no such axis.</exception>
    public AxisState StateOf(string axis) => _feed.Engine.Reactors[axis].State;

    /// <summary>The state of a monitor, or of a stop that compares something, after the latest cycle.</summary>
    /// <exception cref="InvalidOperationException">There is no such monitor.</exception>
    public MonitorState StateOf(string axis, string monitor) => _feed.Engine.RunOf(axis, monitor).Chain.State;

    /// <summary>Takes the next sample and runs the cycles that can be run.</summary>
    /// <param name="time">Its time, ns, rising; times count from the first sample.</param>
    /// <param name="numbers">One number a column, NaN where it is missing.</param>
    /// <param name="signals">The signals by name; one that is left out holds its last value. Windows need none.</param>
    /// <exception cref="InputException">A time that does not rise, a column that is not given, or a missing value that the plan rejects.</exception>
    public void Step(long time, IReadOnlyDictionary<string, double> numbers, IReadOnlyDictionary<string, bool>? signals = null) =>
        _feed.Step(time, numbers, signals);

    /// <summary>Runs the last cycles and tells what was found.</summary>
    /// <param name="name">What to call the recording.</param>
    /// <exception cref="InputException">No sample, or a gap that the plan rejects.</exception>
    public ReplayResult Finish(string name = "samples")
    {
        if (_feed.Inputs.Times.Count > 0) new Gaps(_plan, _feed.Inputs.Times.Span, Sampling.Of(_feed.Inputs.Times.Span)).Check(_plan, name);
        _feed.End(name);
        return new ResultBuilder(_plan, _feed.Inputs, _feed.Engine).Build(name, null);
    }
}
