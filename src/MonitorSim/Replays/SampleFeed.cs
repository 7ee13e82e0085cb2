using MonitorSim.Plans;
using MonitorSim.Signals;

namespace MonitorSim.Replays;

/// <summary>Feeds an engine sample by sample and runs the cycles that can be run.</summary>
internal sealed class SampleFeed
{
    private readonly Plan _plan;
    private readonly Dictionary<string, SignalReader> _windows = [];
    private long _first;

    /// <exception cref="InputException">The plan is wrong, or trips on gaps without saying what a gap is.</exception>
    public SampleFeed(Plan plan)
    {
        PlanChecks.Require(plan);
        if (plan.Missing == MissingPolicy.Trip && plan.Gap is null)
            throw new InputException(new Problem("gap", "a replay by samples does not know the median step", "state the gap, such as \"50 ms\""));
        (_plan, Inputs) = (plan, new Inputs(plan));
        Engine = new(plan, Inputs);
        foreach (var (name, signal) in plan.Signals)
            if (signal.Windows is not null) _windows[name] = new(signal);
    }

    public Inputs Inputs { get; }

    public Engine Engine { get; }

    /// <summary>The sample that the latest cycle saw; 0 before the first.</summary>
    public int Seen { get; private set; }

    /// <summary>Takes the next sample and runs the cycles that can be run.</summary>
    /// <exception cref="InputException">A time that does not rise, a column that is not given, a missing value that the plan rejects, or more samples than can be counted.</exception>
    public void Step(long time, IReadOnlyDictionary<string, double> numbers, IReadOnlyDictionary<string, bool>? signals)
    {
        var sample = Inputs.Times.Count;
        if (sample == 0) _first = time;
        var now = time - _first;
        Check(sample, now, numbers);
        if (_plan.Cycle is not null && sample > 0) RunUntil(Engine.Clock.CountBefore(now));
        if (sample > 0) Inputs.Gaps.Note(sample, now - Inputs.Times[sample - 1]);
        Inputs.Times.Append(now);
        foreach (var column in Inputs.Columns) Inputs.Column(column).Append(numbers[column], _plan.Missing == MissingPolicy.Hold);
        foreach (var (name, windows) in _windows) Inputs.Signal(name).Set(sample, windows.InWindow(now));
        if (signals is not null)
            foreach (var (name, value) in signals) Inputs.Signal(name).Set(sample, value);
        if (_plan.Cycle is null) RunToEnd();
    }

    /// <summary>Runs the cycles that no further sample can change.</summary>
    /// <exception cref="InputException">There was no sample.</exception>
    public void End(string name)
    {
        if (Inputs.Times.Count == 0) throw new InputException(new Problem(name, "the recording has no sample", "give at least one"));
        RunToEnd();
    }

    public void Carry(Checkpoint checkpoint)
    {
        (_first, Seen) = (checkpoint.Of(_first), checkpoint.Of(Seen));
        Inputs.Carry(checkpoint);
        Engine.Carry(checkpoint);
    }

    private void RunToEnd() => RunUntil(Engine.Clock.Count);

    private void RunUntil(int count)
    {
        while (Engine.Done < count)
        {
            var cycle = Engine.Clock.At(Engine.Done, Seen);
            Seen = cycle.Sample;
            Engine.Step(cycle);
        }
    }

    private void Check(int sample, long now, IReadOnlyDictionary<string, double> numbers)
    {
        if (sample == int.MaxValue) throw new InputException(new Problem($"sample {sample}", "no more samples can be counted", "begin a new replay"));
        if (sample > 0 && now <= Inputs.Times[sample - 1])
            throw new InputException(new Problem($"sample {sample}", $"time {now} ns does not rise", "times must rise"));
        foreach (var column in Inputs.Columns)
        {
            if (!numbers.TryGetValue(column, out var value))
                throw new InputException(new Problem($"sample {sample}", $"column '{column}' is not given", "give NaN where it is missing"));
            if (double.IsNaN(value) && (_plan.Missing == MissingPolicy.Reject || (_plan.Missing == MissingPolicy.Hold && sample == 0)))
                throw new InputException(new Problem($"sample {sample}", $"column '{column}' is missing", "set \"missing\" to \"hold\" or \"trip\""));
        }
    }
}
