using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>One monitor, or one stop as far as it compares something, during a replay: its chain, and what has been noted of it.</summary>
internal sealed class MonitorRun
{
    private readonly List<Side?> _trips = [];
    private (long RequestedAt, long? WatchingAt)? _stretch;
    private long _watchedBefore;
    private bool _isQuiet;

    public MonitorRun(string axis, string name, string function, Func<Measures> measures, long delay, long filter, Reaction reaction,
        bool canTrip = true)
    {
        (Axis, Name, Function, NewMeasures, Delay, Filter, Reaction) = (axis, name, function, measures, delay, filter, reaction);
        Chain = new(measures(), delay, filter, canTrip);
        for (var s = 0; s < Sides.Count; s++)
        {
            var side = Sides[s];
            Chain.Runs[s].Ended = run => Excursions.Add(new(this, side, run.Since, run.Until, run.Peak, run.PeakAt, run.Tripped));
        }
    }

    public string Axis { get; }
    public string Name { get; }
    public string Function { get; }
    public string FullName => $"{Axis}.{Name}";
    public long Delay { get; }
    public long Filter { get; }
    public Reaction Reaction { get; }
    public Chain Chain { get; }
    public Func<Measures> NewMeasures { get; }
    public IReadOnlyList<Side> Sides => Chain.Watch.Measures.Sides;
    public RequestTrack Track { get; } = new();

    /// <summary>Whether it belongs to a stop, which an acknowledgement does not restart.</summary>
    public bool IsStop { get; init; }
    /// <summary>Whether its request depends on an output or a state.</summary>
    public bool DependsOnReplay { get; init; }
    /// <summary>Whether a delay, a grace or an apply time of the plan decides when it watches.</summary>
    public bool HasDelay { get; init; } = true;

    public List<RunNote> Excursions { get; } = [];
    public List<(long Time, bool On)> OutputEdges { get; } = [];
    public bool IsOutputOn { get; private set; }
    /// <summary>Stretches of request: when it came and when watching began, ns, and the index of the last cycle.</summary>
    public List<(long RequestedAt, long? WatchingAt, int Last)> Stretches { get; } = [];
    public int TripCount { get; private set; }

    /// <summary>The first cycle at which something of it may change by itself; until then only its request can change it.</summary>
    public int NextChange { get; private set; }

    /// <summary>Takes one cycle and adds what trips.</summary>
    public void Step(in Cycle cycle, int choice, bool anew, bool invalid, List<TripNote> notes)
    {
        _isQuiet = cycle.Index < NextChange && choice == Chain.Watch.Choice && !anew && !invalid;
        if (_isQuiet) return;
        Track.Set(cycle.Index, choice, anew && IsStop);
        _trips.Clear();
        Chain.Step(cycle, choice, anew, invalid, _trips);
        NoteWatching(cycle, anew);
        foreach (var side in _trips)
        {
            TripCount++;
            notes.Add(side is null ? TripNote.OfInvalidInput(this, cycle) : TripNote.Of(this, cycle, side));
        }
    }

    /// <summary>Sets the output, if the function has one; the last step of a cycle.</summary>
    public void SetOutput(in Cycle cycle)
    {
        if (_isQuiet) return;
        if (Chain.Watch.Measures.Output(cycle, Chain.Watch.IsWatching || Chain.IsTripped) is not { } on || on == IsOutputOn) return;
        IsOutputOn = on;
        OutputEdges.Add((cycle.Time, on));
    }

    /// <summary>What expressions see of it: the output or the latched trip, of the cycle before.</summary>
    public bool ShownBefore { get; private set; }

    public bool HasOutput => Chain.Watch.Measures is OutputMeasures;

    /// <summary>Closes a cycle.</summary>
    /// <returns>Whether what expressions see of it has changed.</returns>
    public bool EndCycle(in Cycle cycle, Lookahead lookahead)
    {
        if (!_isQuiet) NextChange = lookahead.NextChange(Chain, cycle);
        var shown = HasOutput ? IsOutputOn : Chain.IsTripped;
        var changes = shown != ShownBefore;
        ShownBefore = shown;
        return changes;
    }

    /// <summary>How long it has watched, ns: the sum of last minus first cycle of each stretch.</summary>
    /// <param name="clock">The cycles.</param>
    /// <param name="done">How many were run.</param>
    public long Watched(CycleClock clock, int done) =>
        WatchedBefore(clock) + (_stretch?.WatchingAt is { } since ? clock.TimeOf(done - 1) - since : 0);

    /// <summary>Forgets what was noted since the last time.</summary>
    public void ForgetNews(CycleClock clock)
    {
        Excursions.Clear();
        OutputEdges.Clear();
        Track.LetGo();
        _watchedBefore = WatchedBefore(clock);
        Stretches.Clear();
    }

    public void Carry(Checkpoint checkpoint)
    {
        Chain.Carry(checkpoint);
        Track.Carry(checkpoint);
        var (isRequested, requestedAt, watchingAt) = (checkpoint.Of(_stretch.HasValue), checkpoint.Of(_stretch?.RequestedAt ?? 0), checkpoint.Of(_stretch?.WatchingAt));
        _stretch = isRequested ? (requestedAt, watchingAt) : null;
        (_watchedBefore, TripCount) = (checkpoint.Of(_watchedBefore), checkpoint.Of(TripCount));
        (IsOutputOn, ShownBefore) = (checkpoint.Of(IsOutputOn), checkpoint.Of(ShownBefore));
    }

    /// <summary>Closes what is still open at the end of the recording.</summary>
    /// <param name="cycles">How many cycles there were.</param>
    public void Finish(int cycles)
    {
        foreach (var run in Chain.Runs) run.End();
        EndStretch(cycles - 1);
    }

    private long WatchedBefore(CycleClock clock)
    {
        var watched = _watchedBefore;
        foreach (var stretch in Stretches)
            if (stretch.WatchingAt is { } since) watched += clock.TimeOf(stretch.Last) - since;
        return watched;
    }

    private void NoteWatching(in Cycle cycle, bool anew)
    {
        var watch = Chain.Watch;
        if (anew || !watch.IsRequested || watch.RequestedAt != _stretch?.RequestedAt) EndStretch(cycle.Index - 1);
        if (watch.IsRequested) _stretch = (watch.RequestedAt, watch.WatchingSince);
    }

    private void EndStretch(int last)
    {
        if (_stretch is { } stretch) Stretches.Add((stretch.RequestedAt, stretch.WatchingAt, last));
        _stretch = null;
    }
}

/// <summary>A run over its limit, as noted.</summary>
internal sealed record RunNote(MonitorRun Monitor, Side Side, long From, long Until, Reading Peak, long PeakAt, bool Trips);

/// <summary>A trip, as noted at its cycle.</summary>
internal sealed record TripNote(MonitorRun Monitor, Side? Side, Cycle Cycle, Reading Value, int Level, Reading Peak, long RequestedAt, long? WatchingAt, long ExceededAt)
{
    public static TripNote OfInvalidInput(MonitorRun monitor, in Cycle cycle) =>
        new(monitor, null, cycle, default, 0, default, monitor.Chain.Watch.RequestedAt, monitor.Chain.Watch.WatchingSince, cycle.Time);

    public static TripNote Of(MonitorRun monitor, in Cycle cycle, Side side)
    {
        var s = monitor.Sides.ToList().IndexOf(side);
        var (watch, run) = (monitor.Chain.Watch, monitor.Chain.Runs[s]);
        return new(monitor, side, cycle, watch.Comparisons[s].Reading, watch.Comparisons[s].Level, run.Peak, watch.RequestedAt, watch.WatchingSince, run.Since);
    }
}
