using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Monitors;

/// <summary>The only state machine of monitors: request, arming delay, measure against limit, filter, trip.</summary>
internal sealed class Chain
{
    private readonly Run[] _runs;
    private readonly Watch _watch;
    private readonly long _filter;
    private readonly bool _canTrip;

    /// <param name="measures">What is measured.</param>
    /// <param name="delay">The arming delay, ns.</param>
    /// <param name="filter">How long an exceedance must last to trip, ns.</param>
    /// <param name="canTrip">Whether it trips at all; otherwise it only measures.</param>
    public Chain(Measures measures, long delay, long filter, bool canTrip = true)
    {
        _canTrip = canTrip;
        _watch = new(measures, delay);
        _filter = filter;
        _runs = [.. measures.Sides.Select(_ => new Run())];
    }

    public MonitorState State => IsTripped ? MonitorState.Tripped
        : _watch.IsWatching ? MonitorState.Watching
        : _watch.IsRequested ? MonitorState.Arming
        : MonitorState.Idle;

    /// <summary>A trip is latched.</summary>
    public bool IsTripped { get; private set; }

    public Watch Watch => _watch;

    public IReadOnlyList<Run> Runs => _runs;

    /// <summary>Takes one cycle, then <see cref="Runs"/> and <see cref="Watch"/> tell what it brought.</summary>
    /// <param name="cycle">The cycle.</param>
    /// <param name="choice">The level asked for; -1 without a request.</param>
    /// <param name="anew">Whether an ongoing request counts as new.</param>
    /// <param name="invalid">Whether an input that is needed is invalid, which trips a watching monitor at once.</param>
    /// <param name="trips">Receives the sides that trip at this cycle; null stands for invalid input.</param>
    public void Step(in Cycle cycle, int choice, bool anew, bool invalid, List<Side?> trips)
    {
        if (anew)
        {
            foreach (var run in _runs) run.End();
        }

        _watch.Step(cycle, choice, anew);
        var sides = _watch.Measures.Sides;
        var trippedBefore = IsTripped;
        if (_canTrip && invalid && _watch.IsWatching && !trippedBefore)
        {
            trips.Add(null);
            IsTripped = true;
        }

        for (var s = 0; s < sides.Count; s++)
        {
            var run = _runs[s];
            if (!_watch.Comparisons[s].IsExceeded(sides[s]))
            {
                run.End();
                continue;
            }

            run.Extend(cycle, _watch.Comparisons[s].Reading);
            if (!_canTrip || trippedBefore || cycle.Time - run.Since < _filter) continue;
            trips.Add(sides[s]);
            run.Tripped = true;
            IsTripped = true;
        }
    }

    /// <summary>Opens the latch.</summary>
    public void Acknowledge() => IsTripped = false;

    /// <summary>Keeps what it remembers of samples apart from the recording.</summary>
    public void LetGo()
    {
        foreach (var run in _runs) run.LetGo();
        _watch.Measures.LetGo();
    }

    public void Carry(Checkpoint checkpoint)
    {
        IsTripped = checkpoint.Of(IsTripped);
        foreach (var run in _runs) run.Carry(checkpoint);
        _watch.Carry(checkpoint);
    }
}

/// <summary>The states of a monitor.</summary>
public enum MonitorState
{
    /// <summary>Not requested.</summary>
    Idle,
    /// <summary>Requested, within the delay.</summary>
    Arming,
    /// <summary>Comparing.</summary>
    Watching,
    /// <summary>Tripped and not acknowledged.</summary>
    Tripped,
}

/// <summary>The present row of exceeding cycles of one side.</summary>
internal sealed class Run
{
    public bool IsOn { get; private set; }
    /// <summary>Time of its first cycle, ns.</summary>
    public long Since { get; private set; }
    /// <summary>Time of its last cycle so far, ns.</summary>
    public long Until { get; private set; }
    public Reading Peak { get; private set; }
    public long PeakAt { get; private set; }
    public bool Tripped { get; set; }

    /// <summary>Receives every run as it ends.</summary>
    public Action<Run>? Ended { get; set; }

    public void Extend(in Cycle cycle, in Reading reading)
    {
        if (!IsOn) (IsOn, Since, Tripped, Peak, PeakAt) = (true, cycle.Time, false, reading, cycle.Time);
        else if (Reading.Compare(reading, Peak) > 0) (Peak, PeakAt) = (reading, cycle.Time);
        Until = cycle.Time;
    }

    public void LetGo()
    {
        if (IsOn) Peak = Peak.Held();
    }

    public void Carry(Checkpoint checkpoint)
    {
        (IsOn, Since, Until, PeakAt, Tripped) = (checkpoint.Of(IsOn), checkpoint.Of(Since), checkpoint.Of(Until), checkpoint.Of(PeakAt), checkpoint.Of(Tripped));
        if (IsOn) Peak = checkpoint.Of(Peak);
    }

    public void End()
    {
        if (!IsOn) return;
        IsOn = false;
        Ended?.Invoke(this);
    }
}
