using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>What drive and brake are told in the course of a stop, and when they do it: ramp, its end, brake, torque off; and what watches the ramp.</summary>
internal sealed class StopSequence
{
    private readonly Plant _plant;
    private readonly Func<Reaction, StopProgram> _programOf;
    private readonly MachineCondition _faults;
    private readonly PriorityQueue<Action<MotionState>, (double Time, int Order)> _agenda = new();
    private readonly HashSet<Watch> _taken = [];
    private List<Watch> _watches = [];
    private StopProgram _program;
    private Drive _drive;
    private bool _isBraked, _isShorted, _isBrakeCommanded, _hasRampEnded;
    private double _began;
    private double? _standingSince;
    private int _order;
    private AxisState _state = AxisState.Running;

    public StopSequence(Plant plant, Func<Reaction, StopProgram> programOf, MachineCondition faults, double velocity)
    {
        (_plant, _programOf, _faults, _program) = (plant, programOf, faults, programOf(Reaction.None));
        _drive = faults.HasNoTorque ? Drive.Off : faults.Runaway != 0 ? new Drive.Constant(faults.Runaway * plant.Limit) : new Drive.Ramp(0, velocity, 0);
    }

    public Actuation Actuation => new(_drive, _isBraked, _isShorted);

    /// <summary>What watches the stop itself.</summary>
    public IReadOnlyList<Watch> Watches => _watches;

    /// <summary>When the next command is acted on; infinite: none is under way.</summary>
    public double NextAt => _agenda.TryPeek(out _, out var at) ? at.Time : double.PositiveInfinity;

    public bool IsPending => _agenda.Count > 0;

    /// <summary>When the drive first acted.</summary>
    public double? ActedAt { get; private set; }

    /// <summary>When the torque was off.</summary>
    public double? OffAt { get; private set; }

    /// <summary>When the brake had closed.</summary>
    public double? BrakedAt { get; private set; }

    public bool HasTaken(Watch watch) => _taken.Contains(watch);

    /// <summary>Takes a trip.</summary>
    public void Take(Watch watch, in MotionState state)
    {
        _taken.Add(watch);
        Demand(watch.Watcher.Reaction, state);
    }

    /// <summary>Takes a demand; one that is not more severe than what is under way changes nothing.</summary>
    public void Demand(Reaction reaction, in MotionState state)
    {
        if (reaction == Reaction.None) return;
        var asked = reaction switch { Reaction.Stop0 => AxisState.TorqueOff, Reaction.Stop1 => AxisState.StoppingToOff, _ => AxisState.StoppingToHold };
        if (asked <= _state || (asked == AxisState.StoppingToHold && _state == AxisState.Holding)) return;
        (_program, _began, _standingSince, _hasRampEnded) = (_programOf(reaction), state.Time, null, false);
        _state = asked;
        _watches = [];
        if (asked == AxisState.TorqueOff)
        {
            SwitchOff(state.Time);
            return;
        }

        _watches = [.. StopWatchers.Of(_program, state).Select(watcher => new Watch(watcher))];
        At(state.Time + _program.ReactionDelay, BeginRamp);
        if (_program.Variant == StopVariant.Time) At(_began + _program.Time, then => WhileRamping(asked, EndRamp, then));
        else if (_program.TimeLimit is { } limit) At(_began + limit + _program.Response, then => WhileRamping(asked, late => Demand(Reaction.Stop0, late), then));
    }

    /// <summary>Lets everything act whose time has come.</summary>
    public void ActDue(in MotionState state)
    {
        NoteStanding(state);
        while (_agenda.TryPeek(out _, out var at) && at.Time <= state.Time) _agenda.Dequeue()(state);
    }

    /// <summary>Ends a stretch early where standstill begins within it, if that matters for the end of the ramp.</summary>
    public double StandingFrom(Segment segment, double until)
    {
        if (!IsAwaitingStandstill) return until;
        double Slowed(double time) => _program.Standstill - Math.Abs(segment.At(time).Velocity);
        return !(Slowed(segment.From) >= 0) && Slowed(until) >= 0 ? Crossing.First(Slowed, segment.From, until) : until;
    }

    private bool IsAwaitingStandstill => _state is AxisState.StoppingToHold or AxisState.StoppingToOff && !_hasRampEnded && _program.Variant != StopVariant.Time;

    private void NoteStanding(in MotionState state)
    {
        if (!IsAwaitingStandstill) return;
        if (Math.Abs(state.Velocity) > _program.Standstill)
        {
            _standingSince = null;
        }
        else if (_standingSince is null)
        {
            var since = state.Time;
            _standingSince = since;
            At(since + _program.Settle + _program.Response, then =>
            {
                if (_standingSince == since) WhileRamping(_state, EndRamp, then);
            });
        }
    }

    private void At(double time, Action<MotionState> act) => _agenda.Enqueue(act, (time, _order++));

    private void WhileRamping(AxisState state, Action<MotionState> act, MotionState then)
    {
        if (_state == state && IsRamp(state) && !_hasRampEnded) act(then);
    }

    private static bool IsRamp(AxisState state) => state is AxisState.StoppingToHold or AxisState.StoppingToOff;

    private void BeginRamp(MotionState state)
    {
        if (OffAt is not null) return;
        ActedAt ??= state.Time;
        if (_faults.IgnoresRamp) return;
        _drive = _faults.HasNoTorque ? Drive.Off : Ramp.Of(_program, _began, state);
    }

    private void EndRamp(MotionState state)
    {
        _hasRampEnded = true;
        if (_state == AxisState.StoppingToHold)
        {
            _state = AxisState.Holding;
            _watches = [.. StopWatchers.OfHolding(_program, state).Select(watcher => new Watch(watcher))];
            return;
        }

        if (!_program.CommandsBrake)
        {
            Demand(Reaction.Stop0, state);
            return;
        }

        CommandBrake(state.Time);
        At(state.Time + _program.BrakeWait, then => Demand(Reaction.Stop0, then));
    }

    private void SwitchOff(double time)
    {
        CommandBrake(time);
        At(time + _program.ReactionDelay, state =>
        {
            (_drive, _isShorted, OffAt) = (Drive.Off, _plant.ShortCircuit is not null, state.Time);
            ActedAt ??= state.Time;
        });
    }

    private void CommandBrake(double time)
    {
        if (_isBrakeCommanded || _plant.Brake is null || _faults.BrakeStaysOpen) return;
        _isBrakeCommanded = true;
        At(time + _program.ReactionDelay + _plant.Brake.Apply, state => (_isBraked, BrakedAt) = (true, state.Time));
    }
}
