using MonitorSim.Channels;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>One axis of a replay that leaves its recording when a reaction takes hold, or a fault begins, and follows its plant from then on.</summary>
/// <remarks>
/// <para>Before that, every value is the recorded one. After it, the drive follows the state that the reactor commands, <c>reactionDelay</c> later: torque off
/// (coasting, short circuit, brake), the ramp of a stop, holding. Running again it holds still where it is: what the recording did later has no meaning any
/// more, and a machine does not start by itself. A stop on request stays on the recording, which shows how the machine answered, until a trip changes it.</para>
/// <para>Start: position of the newest sample up to that moment, carried on with its speed. Temperatures stay recorded. The torque is that of the drive.</para>
/// </remarks>
internal sealed class SimulatedAxis
{
    private readonly AxisPlan _plan;
    private readonly Plan _head;
    private readonly Plant _plant;
    private readonly PlantMotion _motion;
    private readonly SampleTimes _times;
    private readonly List<MachineFault> _faults;
    private readonly Dictionary<(Kind, bool), SimulatedChannel> _channels = [];
    private readonly PriorityQueue<Action, (long Time, int Order)> _agenda = new();
    private readonly List<MotionState> _states = [];
    private MachineCondition _condition;
    private MotionState _state;
    private Drive _drive = Drive.Hold;
    private AxisState _commanded = AxisState.Running;
    private bool _isBraked, _isShorted, _isLeaving;
    private double _secondOffset;
    private long _leaves = long.MaxValue, _now;
    private int _taken, _order, _brakeCommand;

    public SimulatedAxis(Plan head, AxisPlan plan, SampleTimes times, IEnumerable<MachineFault> faults)
    {
        (_head, _plan, _times, _plant) = (head, plan, times, Plant.Of(plan));
        (_motion, _faults) = (new(_plant), [.. faults]);
        foreach (var fault in _faults)
        {
            if (fault is RunawayFault) MachineCondition.Of([fault], _plant, 0);
            var from = fault.From?.Nanoseconds ?? 0;
            At(from, () => Begin(fault));
            if (fault is RunawayFault or TorqueLossFault) _leaves = Math.Min(_leaves, from);
        }
    }

    /// <summary>When it left its recording, ns; null: it has not.</summary>
    public long? LeftAt { get; private set; }

    /// <summary>The state in which it left.</summary>
    public MotionState Start { get; private set; }

    /// <summary>The simulated samples; times are those of the recording, s.</summary>
    public IReadOnlyList<MotionState> States => _states;

    /// <summary>What stands for a recorded channel.</summary>
    public Channel Stand(Kind kind, bool isSecond, Channel recorded) => kind == Kind.Temperature ? recorded : _channels[(kind, isSecond)] = new(recorded);

    /// <summary>Takes a state that the reactor commands.</summary>
    /// <param name="time">The cycle's, ns.</param>
    /// <param name="state">The state.</param>
    /// <param name="isReaction">Whether trips have a part in it: only then does the axis leave its recording.</param>
    /// <param name="hasSbc">Whether the plan commands the brake itself.</param>
    public void Command(long time, AxisState state, bool isReaction, bool hasSbc)
    {
        var acts = time + (_head.ReactionDelay?.Nanoseconds ?? 0);
        if (isReaction) _leaves = Math.Min(_leaves, acts);
        At(acts, () => Enter(state, time));
        if (!hasSbc) CommandBrake(time, state == AxisState.TorqueOff);
    }

    /// <summary>Takes a command of the brake.</summary>
    public void CommandBrake(long time, bool on)
    {
        var (command, acts) = (++_brakeCommand, time + (_head.ReactionDelay?.Nanoseconds ?? 0));
        if (!on) At(acts, () => _isBraked = false);
        else if (_plant.Brake is { } brake) At(acts + (long)Math.Round(brake.Apply * 1e9), () => _isBraked |= command == _brakeCommand && !_condition.BrakeStaysOpen);
    }

    /// <summary>Makes the samples up to one ready to be read.</summary>
    /// <param name="sample">The newest that the cycle sees.</param>
    /// <param name="channels">The channels of the axis, for the speed at which it leaves.</param>
    public void TakeUpTo(int sample, AxisChannels channels)
    {
        for (; _taken <= sample; _taken++)
        {
            var time = _times[_taken];
            if (time <= _leaves) continue;
            if (LeftAt is null) Leave(_taken - 1, channels);
            Advance(time);
            Append(_taken);
        }
    }

    private void At(long time, Action act) => _agenda.Enqueue(act, (time, _order++));

    private double Seconds(long time) => (time - _leaves) / 1e9;

    private void Leave(int newest, AxisChannels channels)
    {
        LeftAt = _leaves;
        var start = TrueStart.Of(newest, channels, _times, kind => _channels.GetValueOrDefault((kind, false))?.Recorded);
        var carried = start.Position + start.Velocity * ((_leaves - _times[Math.Max(newest, 0)]) / 1e9);
        _now = _leaves;
        _state = new(0, carried, start.Velocity, 0, 0);
        if (_channels.TryGetValue((Kind.Position, true), out var second)) _secondOffset = SecondOffset(second, newest);

        // As before, until something acts: what has been commanded up to now follows in its order.
        _drive = new Drive.Ramp(0, start.Velocity, 0);
        _isLeaving = true;
        Act(_leaves);
        _isLeaving = false;
        Start = FromNowOn(_leaves);
    }

    private double SecondOffset(SimulatedChannel second, int sample) =>
        sample >= 0 && _channels.TryGetValue((Kind.Position, false), out var first) && first.Recorded.IsPresent(sample) && second.Recorded.IsPresent(sample)
            ? second.Recorded.Value(sample) - first.Recorded.Value(sample) : 0;

    private void Advance(long until)
    {
        while (_now < until)
        {
            var next = _agenda.TryPeek(out _, out var due) && due.Time < until ? Math.Max(due.Time, _now) : until;
            Move(next);
            _now = next;
            Act(next);
        }
    }

    private void Move(long until)
    {
        var end = Seconds(until);
        while (_state.Time < end)
        {
            var segment = _motion.Next(_state, new(_drive, _isBraked, _isShorted)).EndingAt(end);
            _state = segment.At(segment.Until);
        }
    }

    private void Act(long time)
    {
        while (_agenda.TryPeek(out _, out var due) && due.Time <= time) _agenda.Dequeue()();
    }

    private void Begin(MachineFault fault)
    {
        _condition = _condition.With(fault, _plant, _state.Velocity);
        if (fault is TorqueLossFault || (fault is RunawayFault && _commanded == AxisState.Running)) _drive = Faulty(_drive);
    }

    private Drive Faulty(Drive otherwise) => _condition.HasNoTorque ? Drive.Off : _condition.Runaway != 0 ? new Drive.Constant(_condition.Runaway * _plant.Limit) : otherwise;

    private void Enter(AxisState state, long commanded)
    {
        _commanded = state;
        _isShorted = state == AxisState.TorqueOff && _plant.ShortCircuit is not null;
        _drive = state switch
        {
            AxisState.TorqueOff => Drive.Off,
            AxisState.Running => Faulty(_isLeaving ? new Drive.Ramp(0, _state.Velocity, 0) : Drive.Hold),
            _ when _condition.HasNoTorque => Drive.Off,
            _ when _condition.IgnoresRamp => _drive,
            AxisState.StoppingToOff => Ramp.Of(StopProgram.Of(_head, _plan, Reaction.Stop1), Seconds(commanded), _state),
            AxisState.StoppingToHold => Ramp.Of(StopProgram.Of(_head, _plan, Reaction.Stop2), Seconds(commanded), _state),
            _ => Drive.Hold,
        };
    }

    private void Append(int sample)
    {
        var now = FromNowOn(_times[sample]);
        _states.Add(now);
        foreach (var ((kind, isSecond), channel) in _channels)
        {
            channel.Append(sample, kind switch
            {
                Kind.Position => now.Position + (isSecond ? _secondOffset : 0),
                Kind.Velocity => now.Velocity,
                Kind.Acceleration => now.Acceleration,
                _ => now.Torque,
            });
        }
    }

    // What acts now, seen from now on: acceleration and torque are those after a jump.
    private MotionState FromNowOn(long time) => _motion.Next(_state, new(_drive, _isBraked, _isShorted)).At(_state.Time) with { Time = time / 1e9 };
}
