using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>Something that demands a stop: a request of an axis, or a trip.</summary>
internal sealed record ModelCause(string Axis, string Source, Stop Demand, bool IsRequest)
{
    public override string ToString() => $"{Axis}.{Source}";
}

/// <summary>A monitor of the plan at work.</summary>
internal sealed record ModelWatch(ModelChain Chain, string Request, IReadOnlyList<string>? Whens, ModelOutput? Output)
{
    /// <summary>What an expression reads of it: the output, or the latched trip; of the cycle before.</summary>
    public bool Seen { get; set; }
}

/// <summary>An axis with its monitors, its state and its stop under way.</summary>
internal sealed class ModelAxis
{
    private readonly ModelClock _clock;
    private int _began;
    private int? _stillSince;
    private int? _brakeAt;

    public ModelAxis(string name, JsonElement plan, ModelTrace trace, ModelClock clock)
    {
        (Name, _clock) = (name, clock);
        Channels = new(plan, trace);
        var functions = new ModelFunctions(name, Channels);
        Stops = new(name, plan, Channels, functions);
        foreach (var monitor in plan.Field("monitors")?.EnumerateArray().ToList() ?? [])
        {
            var whens = monitor.Field("levels")?.EnumerateArray().Select(level => level.Text("when")!).ToList();
            Watches.Add(new(new(functions.Read(monitor), clock, trace), monitor.Text("request") ?? "always", whens, ModelOutput.Of(monitor, Channels, functions)));
        }

        foreach (var channel in plan.Field("channels")!.Value.EnumerateObject())
            if (functions.TwoChannels(channel.Name, channel.Value) is { } chain) Watches.Add(new(new(chain, clock, trace), "always", null, null));
        StopChains = Stops.Monitors.ToDictionary(stop => stop.Key, stop => new ModelChain(stop.Value, clock, trace));
    }

    public string Name { get; }
    public ModelChannels Channels { get; }
    public ModelStops Stops { get; }
    public List<ModelWatch> Watches { get; } = [];
    public Dictionary<string, ModelChain> StopChains { get; }
    public List<ModelCause> Causes { get; } = [];
    public ModelState State { get; private set; }
    /// <summary>The state of the cycle before.</summary>
    public ModelState Seen { get; set; }
    public List<(long Time, ModelState State, string Cause)> Changes { get; } = [];
    public ModelOutput Brake { get; } = new(_ => false, _ => true, 0, 0);
    public bool IsStopping => State is ModelState.StoppingToHold or ModelState.StoppingToOff;
    public IEnumerable<ModelChain> Chains => Watches.Select(watch => watch.Chain).Concat(StopChains.Values);

    /// <summary>Takes the state that the causes left ask for, where a less severe one is enough.</summary>
    public void Settle(int n)
    {
        var worst = Causes.Count == 0 ? 0 : Causes.Max(cause => (int)cause.Demand);
        if (State == ModelState.Running || worst >= (int)Stop.SS1) return;
        if (State == ModelState.StoppingToHold && worst == (int)Stop.SS2) return;
        var left = worst == 0 ? ModelState.Running : ModelState.Holding;
        if (left == State) return;
        Leave();
        Enter(n, left, "released");
        ReleaseBrake(n);
        if (left == ModelState.Holding) Begin("SOS", n);
    }

    /// <summary>Compares what the state compares; gives the trips.</summary>
    public List<ModelTrip> StepStops(int n) => [.. StopChains.Values.Where(chain => chain.IsRequested).SelectMany(chain => chain.Step(n))];

    /// <summary>A more severe demand takes over.</summary>
    public List<ModelTrip> TakeOver(int n, Stop demand, string cause)
    {
        Leave();
        var trips = new List<ModelTrip>();
        _began = n;
        _stillSince = null;
        Enter(n, (ModelState)(int)demand, cause);
        Start(demand.ToString(), n, trips);
        if (demand == Stop.STO) CommandBrake(n, trips);
        return trips;
    }

    /// <summary>Ends the stop under way where its time has come; gives the trips of what begins then, or null where it does not end.</summary>
    public List<ModelTrip>? TryEnd(int n, string acting)
    {
        if (!IsStopping) return null;
        var trips = new List<ModelTrip>();
        var stop = (Stop)(int)State;
        if (_brakeAt is null)
        {
            if (!IsOver(stop, n)) return null;
            if (stop == Stop.SS1 && Stops.BrakeApply is not null)
            {
                EndChain(stop.ToString());
                CommandBrake(n, trips);
            }
        }

        if (_brakeAt is { } at && Time(n) - Time(at) < Stops.BrakeApply) return trips.Count > 0 ? trips : null;
        var cause = acting.Length > 0 ? acting : Stops.TimeOf(stop) is null ? "standstill" : "time";
        EndChain(stop.ToString());
        Enter(n, stop == Stop.SS1 ? ModelState.TorqueOff : ModelState.Holding, cause);
        Start(stop == Stop.SS1 ? "STO" : "SOS", n, trips);
        return trips;
    }

    private bool IsOver(Stop stop, int n)
    {
        if (Stops.TimeOf(stop) is { } time) return Time(n) - Time(_began) >= time;
        if (!Stops.IsStandstill(_clock.Samples[n]))
        {
            _stillSince = null;
            return false;
        }

        _stillSince ??= n;
        return Time(n) - Time(_stillSince.Value) >= Stops.SettleOf(stop);
    }

    private long Time(int n) => _clock.Times[n];

    private void Enter(int n, ModelState state, string cause)
    {
        State = state;
        Changes.Add((Time(n), state, cause));
    }

    private void CommandBrake(int n, List<ModelTrip> trips)
    {
        if (Stops.BrakeApply is null || _brakeAt is not null) return;
        _brakeAt = n;
        Brake.Set(Time(n), true);
        Start("SBC", n, trips);
    }

    private void Start(string name, int n, List<ModelTrip> trips)
    {
        if (!StopChains.TryGetValue(name, out var chain)) return;
        chain.Begin(n);
        trips.AddRange(chain.Step(n));
    }

    private void Begin(string name, int n) => StopChains[name].Begin(n);

    private void EndChain(string name)
    {
        if (StopChains.TryGetValue(name, out var chain)) chain.End();
    }

    // The stop under way ends; the brake stays on only where torque goes off.
    private void Leave()
    {
        foreach (var (name, chain) in StopChains)
            if (name != "SBC") chain.End();
    }

    private void ReleaseBrake(int n)
    {
        _brakeAt = null;
        Brake.Set(Time(n), false);
        EndChain("SBC");
    }
}
