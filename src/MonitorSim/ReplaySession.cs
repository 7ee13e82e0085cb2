using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Signals;
using MonitorSim.Traces;

namespace MonitorSim;

/// <summary>A replay that is driven sample by sample, for tests of trip logic. It gives the same bits as <see cref="Replay.Run(Plan, Trace, CancellationToken)"/> on the whole
/// recording.</summary>
/// <remarks>A number stands for the shortest decimal that reads back as it: 10.3 means ten point three. A plan must state every unit, as there is no
/// recording that could; and with <c>"missing": "trip"</c> it must state the gap, since the median step is not known in advance.</remarks>
public sealed class ReplaySession
{
    private readonly Plan _plan;
    private readonly Inputs _inputs;
    private readonly Engine _engine;
    private readonly Dictionary<string, SignalReader> _windows = [];
    private long _first;
    private int _hint;

    /// <summary>Begins a replay.</summary>
    /// <exception cref="InputException">The plan is wrong, or trips on gaps without saying what a gap is.</exception>
    public ReplaySession(Plan plan)
    {
        PlanChecks.Require(plan);
        if (plan.Missing == MissingPolicy.Trip && plan.Gap is null)
            throw new InputException(new Problem("gap", "a replay by samples does not know the median step", "state the gap, such as \"50 ms\""));
        (_plan, _inputs) = (plan, new Inputs(plan));
        _engine = new(plan, _inputs);
        foreach (var (name, signal) in plan.Signals)
            if (signal.Windows is not null) _windows[name] = new(signal);
    }

    /// <summary>The columns of numbers that every sample must bring.</summary>
    public IEnumerable<string> Columns => _inputs.Columns;

    /// <summary>The trips of all cycles so far: axis, monitor, side and cycle time in ns.</summary>
    public IReadOnlyList<(string Axis, string Monitor, string Side, long Time)> Trips =>
        [.. _engine.Trips.Select(note => (note.Monitor.Axis, note.Monitor.Name, note.Side?.Name ?? "invalid input", note.Cycle.Time))];

    /// <summary>The state of an axis after the latest cycle.</summary>
    /// <exception cref="KeyNotFoundException">There is no such axis.</exception>
    public AxisState StateOf(string axis) => _engine.Reactors[axis].State;

    /// <summary>The state of a monitor, or of a stop that compares something, after the latest cycle.</summary>
    /// <exception cref="InvalidOperationException">There is no such monitor.</exception>
    public MonitorState StateOf(string axis, string monitor) =>
        _engine.Runs.First(run => run.Axis == axis && run.Name == monitor).Chain.State;

    /// <summary>Takes the next sample and runs the cycles that can be run.</summary>
    /// <param name="time">Its time, ns, rising; times count from the first sample.</param>
    /// <param name="numbers">One number a column, NaN where it is missing.</param>
    /// <param name="signals">The signals by name; one that is left out holds its last value. Windows need none.</param>
    /// <exception cref="InputException">A time that does not rise, a column that is not given, or a missing value that the plan rejects.</exception>
    public void Step(long time, IReadOnlyDictionary<string, double> numbers, IReadOnlyDictionary<string, bool>? signals = null)
    {
        var sample = _inputs.Times.Count;
        if (sample == 0) _first = time;
        var now = time - _first;
        Check(sample, now, numbers);
        if (_plan.Cycle is not null && sample > 0) RunUntil(_engine.Clock.CountBefore(now));
        if (sample > 0) _inputs.Gaps.Note(sample, now - _inputs.Times[sample - 1]);
        _inputs.Times.Append(now);
        foreach (var column in _inputs.Columns) _inputs.Column(column).Append(numbers[column], _plan.Missing == MissingPolicy.Hold);
        foreach (var (name, windows) in _windows) _inputs.Signal(name).Set(sample, windows.InWindow(now));
        if (signals is not null)
            foreach (var (name, value) in signals) _inputs.Signal(name).Set(sample, value);
        if (_plan.Cycle is null) RunUntil(_engine.Clock.Count);
    }

    /// <summary>Runs the last cycles and tells what was found.</summary>
    /// <param name="name">What to call the recording.</param>
    /// <exception cref="InputException">No sample, or a gap that the plan rejects.</exception>
    public ReplayResult Finish(string name = "samples")
    {
        if (_inputs.Times.Count == 0) throw new InputException(new Problem(name, "the recording has no sample", "give at least one"));
        new Gaps(_plan, _inputs.Times.Span, Sampling.Of(_inputs.Times.Span)).Check(_plan, name);
        RunUntil(_engine.Clock.Count);
        return new ResultBuilder(_plan, _inputs, _engine).Build(name, null);
    }

    private void Check(int sample, long now, IReadOnlyDictionary<string, double> numbers)
    {
        if (sample > 0 && now <= _inputs.Times[sample - 1])
            throw new InputException(new Problem($"sample {sample}", $"time {now} ns does not rise", "times must rise"));
        foreach (var column in _inputs.Columns)
        {
            if (!numbers.TryGetValue(column, out var value))
                throw new InputException(new Problem($"sample {sample}", $"column '{column}' is not given", "give NaN where it is missing"));
            if (double.IsNaN(value) && (_plan.Missing == MissingPolicy.Reject || (_plan.Missing == MissingPolicy.Hold && sample == 0)))
                throw new InputException(new Problem($"sample {sample}", $"column '{column}' is missing", "set \"missing\" to \"hold\" or \"trip\""));
        }
    }

    private void RunUntil(int count)
    {
        while (_engine.Done < count)
        {
            var cycle = _engine.Clock.At(_engine.Done, _hint);
            _hint = cycle.Sample;
            _engine.Step(cycle);
        }
    }
}
