using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>A vector about SS1 or SS2 while it is written: the axis moves, the stop begins, and the speed is led from cycle to cycle.</summary>
internal sealed class StopRun
{
    private readonly Bench _bench;
    private readonly string _axis;
    private readonly RampStopPlan _stop;
    private readonly bool _negative;
    private readonly (string Axis, string Monitor)? _calledBy;

    /// <param name="bench">The plan.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="stop">The stop.</param>
    /// <param name="calling">How it begins.</param>
    /// <param name="speed">The magnitude of the speed at which it begins, SI.</param>
    /// <param name="negative">Whether the axis moves backwards.</param>
    public StopRun(Bench bench, string axis, RampStopPlan stop, Calling calling, Fraction speed, bool negative = false)
    {
        (_bench, _axis, _stop, _negative) = (bench, axis, stop, negative);
        Script = bench.Begin(axis);
        if (HasSpeed) Script.Start(axis, Kind.Velocity, negative ? -speed : speed);
        if (stop.Variant == StopVariant.Deceleration && IsAccelerationFree) Script.Start(axis, Kind.Acceleration, Slowing);
        _calledBy = calling.By;
        if (calling.CanBeAbsent)
        {
            calling.Leave(Script);
            Script.Run(2 + (HasSpeed ? Script.Axis(axis).Memory(Kind.Velocity) : 0));
        }

        Begin = calling.Call(Script);
        if (!HasSpeed) return;
        if (stop.Variant != StopVariant.Time && calling.Calls(axis, negative ? -speed : speed, Script.Axis(axis).Root(Kind.Velocity)) is { } target) Script.Want(axis, Kind.Velocity, target);
        Script.Run(1);
        Speed = Script.Axis(axis).Magnitude(Kind.Velocity, Begin) ?? throw new VectorException("it is asked for from the first cycle on: there is no speed at which the stop could begin");

        // What made another axis trip, or another quantity, must not make its own stop trip as well.
        if (_calledBy is not null && calling.Moves(axis) != bench.RootOf(axis, Kind.Velocity)) calling.Leave(Script);
    }

    public Script Script { get; }

    /// <summary>The first cycle of the stop.</summary>
    public int Begin { get; }

    /// <summary>The speed at which it began.</summary>
    public Fraction Speed { get; }

    /// <summary>Cycles since the stop began, of the next cycle.</summary>
    public int Elapsed => Script.Count - Begin;

    private bool HasSpeed => Script.Axis(_axis).Has(Kind.Velocity);

    /// <summary>Whether the acceleration is recorded, so that it need not follow from the speed.</summary>
    public bool IsAccelerationFree => Script.Axis(_axis).Has(Kind.Acceleration) && Script.Axis(_axis).Root(Kind.Acceleration) == Kind.Acceleration;

    /// <summary>Whether the axis moves, and does not just stand, as the stop begins.</summary>
    public bool IsMoving => Speed > Standstill;

    private Fraction Standstill => _bench.Plan.Axes[_axis].Standstill?.Exact ?? Fraction.Zero;

    /// <summary>Twice the deceleration that is demanded, with the sign that slows down.</summary>
    private Fraction Slowing => (_negative ? 2 : -2) * _stop.Deceleration!.Exact;

    /// <summary>The largest speed that the ramp allows at a cycle of the stop, SI.</summary>
    public Fraction RampAt(int elapsed)
    {
        var since = Math.Max(0, elapsed * _bench.Clock.Period - (_stop.Delay?.Nanoseconds ?? 0));
        return Speed - _stop.Deceleration!.Exact * since / 1_000_000_000 + _stop.Tolerance!.Exact;
    }

    /// <summary>Whether the axis would still move at the ramp's own speed.</summary>
    public bool IsMovingAt(int elapsed) => RampAt(elapsed) > Standstill;

    /// <summary>The vector as it is written by then.</summary>
    public Draft Draft(string name, string says) => new(name, says, Script) { CalledBy = _calledBy, Begins = (_axis, Begin) };

    /// <summary>One cycle at a speed.</summary>
    public void Go(Fraction speed, bool past = false, int cycles = 1)
    {
        Script.Want(_axis, Kind.Velocity, past ? Target.Past(_negative ? -speed : speed, !_negative) : Target.At(_negative ? -speed : speed, !_negative));
        Script.Run(cycles);
    }

    /// <summary>So many cycles just at standstill speed, or just above it.</summary>
    public void Stand(int cycles, bool justAbove = false) => Go(Standstill, justAbove, cycles);

    /// <summary>So many cycles of slowing down faster than demanded.</summary>
    public void Slow(int cycles)
    {
        Script.Want(_axis, Kind.Acceleration, new(Slowing));
        Script.Run(cycles);
    }
}
