using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Motion;
using MonitorSim.Plans;
using MonitorSim.Signals;
using MonitorSim.Stops;

namespace MonitorSim.Replays;

/// <summary>The replay itself, cycle by cycle: read inputs, end causes, step every monitor, let demands act, change outputs.</summary>
internal sealed class Engine : IConditionView
{
    private readonly Plan _plan;
    private readonly Inputs _inputs;
    private readonly Reactor _reactor;
    private readonly List<Requested> _monitors = [];
    private readonly List<(string Axis, string Stop, Expression Request)> _stopRequests = [];
    private readonly Dictionary<(string, string), MonitorRun> _byName = [];
    private readonly List<TripNote> _notes = [];
    private readonly HashSet<MonitorRun> _restarted = [];
    private readonly MonitorRun[] _runs;
    private readonly Lookahead _lookahead;
    private readonly Motions _motions;
    private Cycle _cycle;
    private bool? _acknowledgeBefore;

    /// <param name="plan">The plan.</param>
    /// <param name="inputs">What it reads.</param>
    /// <param name="everyCycle">Whether to step every cycle, also those at which nothing can change.</param>
    /// <param name="faults">What goes wrong; null: nothing.</param>
    public Engine(Plan plan, Inputs inputs, bool everyCycle = false, IReadOnlyList<Injection>? faults = null)
    {
        (_plan, _inputs, _motions) = (plan, inputs, new(plan, inputs.Times, faults ?? []));
        var reactors = new SortedDictionary<string, AxisReactor>(StringComparer.Ordinal);
        foreach (var (name, axis) in plan.Axes.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            var channels = new AxisChannelsBuilder(name, axis, inputs.Column, inputs.Units.GetValueOrDefault, inputs.Times, _motions.StandIn(name)).Build();
            reactors[name] = new(channels, axis.Stops);
            Channels[name] = channels;
            foreach (var monitor in axis.Monitors) Add(monitor, channels);
            foreach (var run in TwoChannels.Of(axis, channels)) _monitors.Add(new(run, null, []));
            foreach (var (stop, request) in StopRequests(axis.Stops)) _stopRequests.Add((name, stop, request.Root));
        }

        _monitors.Sort((a, b) => string.CompareOrdinal(a.Run.FullName, b.Run.FullName));
        _reactor = new(reactors, plan.Groups.Values);
        foreach (var run in Runs) _byName[(run.Axis, run.Name)] = run;
        _runs = [.. Runs];
        Clock = new(inputs.Times, plan.Cycle?.Nanoseconds, plan.Phase?.Nanoseconds ?? 0, plan.InputDelay?.Nanoseconds ?? 0);
        // What a simulated motion will be is not known before the cycles that it follows from.
        _lookahead = new(Clock, inputs.Times, !everyCycle && _motions.AreRecorded);
    }

    public CycleClock Clock { get; }

    public Motions Motions => _motions;

    public Dictionary<string, AxisChannels> Channels { get; } = [];

    public IReadOnlyDictionary<string, AxisReactor> Reactors => _reactor.Axes;

    /// <summary>Every monitor, then every stop that compares something.</summary>
    public IEnumerable<MonitorRun> Runs => _monitors.Select(monitor => monitor.Run).Concat(_reactor.Axes.Values.SelectMany(axis => axis.Stops.Watched));

    /// <summary>The trips of all cycles so far.</summary>
    public List<TripNote> Trips { get; } = [];

    public List<ReplayEvent> Events { get; } = [];

    /// <summary>How many cycles are done: those that were stepped, and those after them at which nothing can change.</summary>
    public int Done { get; private set; }

    /// <summary>The monitor of that name, or the stop as far as it compares something.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public MonitorRun RunOf(string axis, string name) => _runs.First(run => run.Axis == axis && run.Name == name);

    /// <summary>Lets go of the samples before one.</summary>
    public void LetGo(int before)
    {
        foreach (var run in _runs) run.Chain.LetGo();
        foreach (var channels in Channels.Values) channels.LetGo(before);
    }

    /// <summary>Whether anything was noted since the last time.</summary>
    public bool HasNews
    {
        get
        {
            if (Trips.Count > 0 || Events.Count > 0) return true;
            foreach (var run in _runs)
                if (run.Excursions.Count > 0 || run.OutputEdges.Count > 0) return true;
            foreach (var axis in _reactor.Axes.Values)
                if (axis.Changes.Count > 0 || axis.BrakeEdges.Count > 0) return true;
            return false;
        }
    }

    /// <summary>Forgets what was noted since the last time.</summary>
    public void ForgetNews()
    {
        Trips.Clear();
        Events.Clear();
        foreach (var run in _runs) run.ForgetNews(Clock);
        foreach (var axis in _reactor.Axes.Values) axis.ForgetNews();
    }

    /// <summary>Carries the state between two cycles, with nothing noted.</summary>
    public void Carry(Checkpoint checkpoint)
    {
        (Done, _acknowledgeBefore) = (checkpoint.Of(Done), checkpoint.Of(_acknowledgeBefore));
        foreach (var channels in Channels.Values) channels.Carry(checkpoint);
        foreach (var monitor in _monitors) monitor.Carry(checkpoint);
        foreach (var run in _runs) run.Carry(checkpoint);
        foreach (var axis in _reactor.Axes.Values) axis.Carry(checkpoint);
    }

    public void Step(in Cycle cycle)
    {
        _cycle = cycle;
        _notes.Clear();
        var eventsBefore = Events.Count;
        _motions.TakeUpTo(cycle.Sample, Channels, Events);
        foreach (var monitor in _monitors) monitor.Read(this);
        _reactor.BeginCycle(_stopRequests.Select(stop => (stop.Axis, stop.Stop, stop.Request.Holds(this))).ToList());
        Acknowledge();
        foreach (var monitor in _monitors)
        {
            var run = monitor.Run;
            run.Step(cycle, monitor.Choice, _restarted.Contains(run), IsInvalid(run), _notes);
        }

        _reactor.Act(cycle, _notes, IsInvalid);
        foreach (var monitor in _monitors) monitor.Run.SetOutput(cycle);
        LogRequestsAndTrips();
        foreach (var (name, axis) in _reactor.Axes)
            if (axis.EndCycle(cycle, _notes) is { } change) Log(name, change.Cause, change.State.ToString());
        _motions.EndCycle(cycle, _reactor.Axes);
        var shownChanges = false;
        foreach (var run in _runs) shownChanges |= run.EndCycle(cycle, _lookahead);
        Trips.AddRange(_notes);
        Done = shownChanges || Events.Count > eventsBefore ? cycle.Index + 1 : NextChange(cycle);
    }

    /// <summary>The first cycle at which anything may change, after one at which nothing did.</summary>
    private int NextChange(in Cycle cycle)
    {
        var (next, change) = (cycle.Index + 1, Clock.Count);
        if (!_lookahead.IsOn || next >= change) return next;
        foreach (var axis in _reactor.Axes.Values)
            if (axis.IsStopping) return next;
        foreach (var run in _runs)
            if ((change = Math.Min(change, run.NextChange)) <= next) return next;
        foreach (var signal in _inputs.Signals.Values)
            if (signal.NextEdge(cycle.Sample) is { } edge) change = Math.Min(change, Clock.FirstSeeing(edge, next));
        if (_plan.Missing == MissingPolicy.Trip && _inputs.Gaps.NextAfter(cycle.Sample) is { } gap) change = Math.Min(change, Clock.FirstSeeing(gap, next));
        return Math.Max(next, change);
    }

    bool IConditionView.Signal(string name) => _inputs.Signal(name).At(_cycle.Sample);

    bool IConditionView.Monitor(string axis, string monitor) => _byName.TryGetValue((axis, monitor), out var run) && run.ShownBefore;

    AxisState IConditionView.State(string axis) => _reactor.Axes[axis].StateBefore;

    private void Acknowledge()
    {
        _restarted.Clear();
        if (_plan.Acknowledge is not { } plan) return;
        var now = _inputs.Signal(plan.Signal).At(_cycle.Sample);
        var isEdge = _acknowledgeBefore is { } before && before != now && now == (plan.On == AcknowledgeEdge.Press);
        _acknowledgeBefore = now;
        if (!isEdge) return;
        var acting = _reactor.Axes.Keys.Where(_reactor.CanAcknowledge).ToList();
        foreach (var axis in _reactor.Axes.Keys)
            Log(axis, "acknowledge", acting.Contains(axis) ? "acknowledged" : "ignored, still stopping");
        foreach (var run in Runs.Where(run => run.Chain.IsTripped && acting.Contains(run.Axis) && _reactor.CanOpenTrips(run.Axis)))
        {
            run.Chain.Acknowledge();
            if (!run.IsStop) _restarted.Add(run);
        }

        foreach (var axis in acting) _reactor.Acknowledge(axis);
    }

    private bool IsInvalid(MonitorRun run) =>
        _plan.Missing == MissingPolicy.Trip && (_inputs.Gaps.IsFirstAfter(_cycle.Sample) || run.Chain.Watch.Measures.LacksInput(_cycle.Sample));

    private void Add(MonitorPlan plan, AxisChannels channels)
    {
        var levels = plan is Sls { Levels: { } list } ? list.Select(level => level.When.Root).ToList() : [];
        var request = plan.Request?.Root;
        var reaction = plan.Reaction ?? plan.DefaultReaction;
        var run = new MonitorRun(channels.Axis, plan.Name, plan.Function, () => plan.Measure(channels), plan.Delay?.Nanoseconds ?? 0,
            plan.Filter?.Nanoseconds ?? 0, reaction, plan.CanTrip(reaction))
        {
            DependsOnReplay = request?.DependsOnReplay() == true || levels.Any(level => level.DependsOnReplay()),
        };
        _monitors.Add(new(run, request, levels));
    }

    private static IEnumerable<(string Stop, Condition Request)> StopRequests(StopsPlan stops)
    {
        if (stops.Sto?.Request is { } sto) yield return ("STO", sto);
        if (stops.Ss1?.Request is { } ss1) yield return ("SS1", ss1);
        if (stops.Ss2?.Request is { } ss2) yield return ("SS2", ss2);
        if (stops.Sos?.Request is { } sos) yield return ("SOS", sos);
    }

    private void LogRequestsAndTrips()
    {
        foreach (var monitor in _monitors)
        {
            if (monitor.IsNew) Log(monitor.Run.Axis, monitor.Run.Name, "requested");
            if (monitor.NewLevel is { } level) Log(monitor.Run.Axis, monitor.Run.Name, $"level {level}");
        }

        foreach (var note in _notes) Log(note.Monitor.Axis, note.Monitor.Name, "tripped");
    }

    private void Log(string axis, string source, string what) => Events.Add(new(Seconds.Of(_cycle.Time), axis, source, what));

    /// <summary>A monitor with its request.</summary>
    private sealed class Requested(MonitorRun run, Expression? request, IReadOnlyList<Expression> levels)
    {
        public MonitorRun Run { get; } = run;

        /// <summary>The level asked for at this cycle, -1 without a request.</summary>
        public int Choice { get; private set; } = -1;

        /// <summary>The level that this cycle is the first to ask for; null where nothing changed, or there are no levels.</summary>
        public int? NewLevel { get; private set; }

        /// <summary>Whether the request came at this cycle.</summary>
        public bool IsNew { get; private set; }

        public void Carry(Checkpoint checkpoint) => Choice = checkpoint.Of(Choice);

        public void Read(IConditionView view)
        {
            var before = Choice;
            Choice = request is not null && !request.Holds(view) ? -1 : 0;
            if (Choice == 0 && levels.Count > 0)
            {
                Choice = -1;
                for (var level = 0; level < levels.Count && Choice < 0; level++)
                    if (levels[level].Holds(view)) Choice = level;
            }

            IsNew = before < 0 && Choice >= 0;
            NewLevel = levels.Count > 0 && Choice >= 0 && Choice != before ? Choice : null;
        }
    }
}
