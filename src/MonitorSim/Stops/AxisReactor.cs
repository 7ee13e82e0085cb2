using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim.Stops;

/// <summary>The state of one axis: takes demands, keeps their causes, and follows its stops to their end.</summary>
internal sealed class AxisReactor(AxisChannels channels, StopsPlan plan)
{
    private readonly List<Cause> _causes = [];
    private readonly List<string> _labels = [];
    private readonly HashSet<MonitorRun> _compared = [], _begun = [];
    private long _stopBegan;
    private long? _standingSince, _brakeSince;
    private bool _hasEnded, _isEndChecked, _isBrakeCommanded;
    private AxisState _logged;
    private string _end = "";

    public AxisStops Stops { get; } = new(channels, plan);

    public AxisState State { get; private set; }

    /// <summary>The state that expressions see: that of the cycle before.</summary>
    public AxisState StateBefore => _logged;

    public IReadOnlyList<Cause> Causes => _causes;

    public List<(long Time, AxisState State, string Cause)> Changes { get; } = [];

    /// <summary>The brake command, the output <c>SBC</c>.</summary>
    public List<(long Time, bool On)> BrakeEdges { get; } = [];

    /// <summary>Whether a trip ever changed the state: the reaction that a simulated motion begins with.</summary>
    public bool HasReacted { get; private set; }

    public bool IsStopping => State is AxisState.StoppingToHold or AxisState.StoppingToOff;

    public void BeginCycle()
    {
        _labels.Clear();
        _compared.Clear();
        _begun.Clear();
        _isEndChecked = false;
    }

    /// <summary>Ends the causes whose requests have gone, where that needs no acknowledgement.</summary>
    public void EndRequests(Func<string, bool> isPresent)
    {
        if (State is AxisState.StoppingToOff or AxisState.TorqueOff) return;
        if (_causes.RemoveAll(cause => cause.IsRequest && !isPresent(cause.Source)) > 0) Resolve();
    }

    /// <summary>Ends the causes that an acknowledgement ends.</summary>
    /// <param name="isPresent">Whether a request is still there.</param>
    /// <param name="tripsToo">Whether causes that were trips end: no stop request may be present in the group.</param>
    public void Acknowledge(Func<string, bool> isPresent, bool tripsToo)
    {
        if (_causes.RemoveAll(cause => cause.IsRequest ? !isPresent(cause.Source) : tripsToo) > 0) Resolve();
    }

    /// <summary>Takes the demands of a cycle, all at once: the most severe decides, and is the cause that is logged; lesser ones are kept.</summary>
    public void Take(IReadOnlyList<Cause> demands, in Cycle cycle)
    {
        var worst = State;
        foreach (var demand in demands)
        {
            if (!_causes.Contains(demand)) _causes.Add(demand);
            var state = demand.Demand == AxisState.StoppingToHold && State == AxisState.Holding ? AxisState.Holding : demand.Demand;
            if (state > worst) worst = state;
        }

        if (worst == State) return;
        HasReacted |= demands.Any(demand => !demand.IsRequest && demand.Demand == worst);
        _labels.AddRange(demands.Where(demand => demand.Demand == worst).Select(demand => demand.Source));
        Enter(worst, cycle);
    }

    /// <summary>Lets the stops of the present state compare, each at most once a cycle.</summary>
    /// <returns>Whether anything was compared.</returns>
    public bool CompareStops(in Cycle cycle, Func<MonitorRun, bool> isInvalid, List<TripNote> notes)
    {
        var any = false;
        foreach (var stop in Stops.Watched)
        {
            if (!IsActive(stop) || !_compared.Add(stop)) continue;
            stop.Step(cycle, 0, _begun.Contains(stop), isInvalid(stop), notes);
            any = true;
        }

        return any;
    }

    /// <summary>Ends the present stop where it ends at this cycle.</summary>
    /// <returns>Whether something changed.</returns>
    public bool EndStop(in Cycle cycle)
    {
        if (Stops.RampOf(State) is not { } stop) return false;
        if (!_hasEnded && !_isEndChecked)
        {
            _isEndChecked = true;
            _standingSince = channels.IsStanding(cycle.Sample) ? _standingSince ?? cycle.Time : null;
            _hasEnded = stop.Variant == StopVariant.Time
                ? cycle.Time - _stopBegan >= stop.Time!.Nanoseconds
                : _standingSince is { } since && cycle.Time - since >= (stop.Settle?.Nanoseconds ?? 0);
        }

        if (!_hasEnded) return false;
        if (State == AxisState.StoppingToOff)
        {
            var isCommanded = Stops.HasBrake && _brakeSince is null;
            if (isCommanded) CommandBrake(cycle);
            if (_brakeSince is { } commanded && cycle.Time - commanded < Stops.Apply) return isCommanded;
        }

        _end = stop.Variant == StopVariant.Time ? "time" : "standstill";
        Enter(State == AxisState.StoppingToOff ? AxisState.TorqueOff : AxisState.Holding, cycle);
        return true;
    }

    /// <summary>Closes the cycle: idle stops step too, outputs and log follow.</summary>
    /// <returns>The change of state to be logged, if any.</returns>
    public (AxisState State, string Cause)? EndCycle(in Cycle cycle, List<TripNote> notes)
    {
        foreach (var stop in Stops.Watched)
            if (!_compared.Contains(stop)) stop.Step(cycle, -1, false, false, notes);

        // The command is set here, so that a brake released and applied within one cycle makes no edge.
        if (_isBrakeCommanded != _brakeSince.HasValue) BrakeEdges.Add((cycle.Time, _isBrakeCommanded = _brakeSince.HasValue));
        if (State == _logged) return null;
        _logged = State;
        var cause = _labels.Count == 0 ? _end : string.Join(", ", _labels.Distinct().Order(StringComparer.Ordinal));
        Changes.Add((cycle.Time, State, cause));
        return (State, cause);
    }

    /// <summary>Forgets what was noted since the last time.</summary>
    public void ForgetNews()
    {
        Changes.Clear();
        BrakeEdges.Clear();
    }

    public void Carry(Checkpoint checkpoint)
    {
        checkpoint.List(_causes, cause => new(checkpoint.Of(cause?.Source ?? ""), checkpoint.OfEnum(cause?.Demand ?? default), checkpoint.Of(cause?.IsRequest ?? false)));
        (State, _logged) = (checkpoint.OfEnum(State), checkpoint.OfEnum(_logged));
        (_stopBegan, _standingSince, _brakeSince) = (checkpoint.Of(_stopBegan), checkpoint.Of(_standingSince), checkpoint.Of(_brakeSince));
        (_hasEnded, _isBrakeCommanded, HasReacted, _end) = (checkpoint.Of(_hasEnded), checkpoint.Of(_isBrakeCommanded), checkpoint.Of(HasReacted), checkpoint.Of(_end));
    }

    private bool IsActive(MonitorRun stop) =>
        stop == Stops.Sto ? State == AxisState.TorqueOff
        : stop == Stops.Ss1 ? State == AxisState.StoppingToOff && !_hasEnded
        : stop == Stops.Ss2 ? State == AxisState.StoppingToHold
        : stop == Stops.Sos ? State == AxisState.Holding
        : _brakeSince is not null;

    /// <summary>Takes the state that the causes left ask for.</summary>
    private void Resolve()
    {
        var state = AxisState.Running;
        foreach (var cause in _causes)
        {
            // A ramp under way goes on; otherwise none begins anew.
            var asked = cause.Demand == State ? State
                : cause.Demand is AxisState.StoppingToHold ? AxisState.Holding
                : cause.Demand is AxisState.StoppingToOff ? AxisState.TorqueOff
                : cause.Demand;
            if (asked > state) state = asked;
        }

        if (state == State) return;
        _end = "released";
        Enter(state, null);
    }

    private void Enter(AxisState state, Cycle? at)
    {
        State = state;
        (_standingSince, _hasEnded, _isEndChecked) = (null, false, false);
        foreach (var stop in Stops.Watched)
            if (stop != Stops.Sbc && IsActive(stop)) _begun.Add(stop);
        if (state is AxisState.Running or AxisState.Holding or AxisState.StoppingToHold) _brakeSince = null;
        if (at is not { } cycle) return;
        _stopBegan = cycle.Time;
        if (state == AxisState.TorqueOff && Stops.HasBrake && _brakeSince is null) CommandBrake(cycle);
    }

    private void CommandBrake(in Cycle cycle)
    {
        _brakeSince = cycle.Time;
        if (Stops.Sbc is not null) _begun.Add(Stops.Sbc);
    }
}
