namespace MonitorSim.Tests.Model;

/// <summary>A monitor as the chain sees it.</summary>
/// <param name="Delays">The arming delay, ns.</param>
/// <param name="Filter">The filter, ns.</param>
/// <param name="Create">A measure at the start of its stretch.</param>
/// <param name="Lacks">Whether a value that the monitor needs is missing at a sample.</param>
internal sealed record ModelMonitor(string Axis, string Name, string Function, Stop? Reaction, long Delay, long Filter, IReadOnlyList<ModelSide> Sides,
    Func<ModelMeasure> Create, Func<int, bool> Lacks)
{
    /// <summary>The limits of the levels, or null.</summary>
    public IReadOnlyList<Fraction>? Levels { get; init; }

    /// <summary>Whether it belongs to a stop.</summary>
    public bool IsStop { get; init; }

    /// <summary>Whether its request reads no output, trip or state.</summary>
    public bool IsExact { get; init; }

    /// <summary>Whether it is an output that trips nothing.</summary>
    public bool NeverTrips { get; init; }
}

/// <summary>A trip.</summary>
internal sealed record ModelTrip(ModelMonitor Monitor, int Side, int Cycle, Compared? Compared, Fraction? Peak, int Asked, int? Watching, int Exceeded);

/// <summary>A run over a limit.</summary>
internal sealed record ModelRun(ModelMonitor Monitor, int Side, int From)
{
    public int Until { get; set; }
    public Fraction Peak { get; set; }
    public int PeakAt { get; set; }
    public bool Trips { get; set; }
}

/// <summary>A stretch of request, without regard to acknowledgements.</summary>
internal sealed record ModelStretch(int From)
{
    public int Until { get; set; } = From;
    public List<int> Chosen { get; } = [];
}

/// <summary>The chain from the request to the trip, cycle by cycle.</summary>
internal sealed class ModelChain(ModelMonitor monitor, ModelClock clock, ModelTrace trace)
{
    private readonly ModelRun?[] _runs = new ModelRun?[monitor.Sides.Count];
    private ModelMeasure? _measure;
    private int _asked;
    private int? _watching;

    public ModelMonitor Monitor => monitor;
    public List<ModelTrip> Trips { get; } = [];
    public List<ModelRun> Runs { get; } = [];
    public List<ModelStretch> Stretches { get; } = [];
    public bool IsTripped { get; private set; }
    public bool IsRequested => _measure is not null;
    public bool IsWatching => _watching is not null;
    /// <summary>How long it has watched, ns.</summary>
    public long Watched { get; private set; }
    private int _lastWatched;
    private bool _isRequested;

    public string State => IsTripped ? "Tripped" : IsWatching ? "Watching" : IsRequested ? "Arming" : "Idle";

    /// <summary>Opens the latch; a monitor restarts, a stop goes on.</summary>
    public void Acknowledge()
    {
        if (!monitor.IsStop) Leave();
        IsTripped = false;
    }

    /// <summary>Follows a request and compares; gives the trips.</summary>
    public List<ModelTrip> Update(int n, bool isRequested, int chosen)
    {
        if (isRequested && !_isRequested) Begin(n);
        if (!isRequested) End();
        _isRequested = isRequested;
        return isRequested ? Step(n, chosen) : [];
    }

    /// <summary>Begins a stretch of request.</summary>
    public void Begin(int n)
    {
        Leave();
        Stretches.Add(new(n));
        Restart(n);
    }

    /// <summary>Ends it.</summary>
    public void End() => Leave();

    /// <summary>Compares at a cycle within a stretch; gives the trips.</summary>
    public List<ModelTrip> Step(int n, int chosen = 0)
    {
        if (_measure is null) Restart(n);
        var stretch = Stretches[^1];
        stretch.Until = n;
        stretch.Chosen.Add(chosen);
        var time = clock.Times[n];
        var isWatching = time - clock.Times[_asked] >= monitor.Delay;
        if (isWatching)
        {
            if (_watching is null) (_watching, _lastWatched) = (n, n);
            Watched += time - clock.Times[_lastWatched];
            _lastWatched = n;
        }

        var compared = _measure!.Step(new(n, time, clock.Samples[n], clock.Times[_asked], isWatching, chosen, monitor.Delay));
        var trips = new List<ModelTrip>();
        for (var side = 0; side < compared.Length; side++)
        {
            if (compared[side] is not { } c || c.X <= c.Limit)
            {
                _runs[side] = null;
                continue;
            }

            var run = _runs[side] ??= NewRun(side, n, c.X);
            run.Until = n;
            if (c.X > run.Peak) (run.Peak, run.PeakAt) = (c.X, n);
            if (IsTripped || monitor.NeverTrips || time - clock.Times[run.From] < monitor.Filter) continue;
            run.Trips = true;
            trips.Add(new(monitor, side, n, c, run.Peak, _asked, _watching, run.From));
        }

        if (!IsTripped && isWatching && !monitor.NeverTrips && trace.HasMissing == "trip" && (monitor.Lacks(clock.Samples[n]) || trace.IsAfterGap(clock.Samples[n])))
            trips.Add(new(monitor, -1, n, null, null, _asked, _watching, n));
        IsTripped |= trips.Count > 0;
        Trips.AddRange(trips);
        return trips;
    }

    private ModelRun NewRun(int side, int n, Fraction x)
    {
        var run = new ModelRun(monitor, side, n) { Peak = x, PeakAt = n };
        Runs.Add(run);
        return run;
    }

    private void Restart(int n) => (_measure, _asked, _watching) = (monitor.Create(), n, null);

    private void Leave()
    {
        (_measure, _watching) = (null, null);
        Array.Clear(_runs);
    }
}
