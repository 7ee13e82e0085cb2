using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>By the trip of a monitor of speed, the axis slowing down from far beyond its limit all the while: so a stop by deceleration finds it slowing down
/// from its first cycle on.</summary>
/// <param name="bench">The plan.</param>
/// <param name="by">The monitor.</param>
/// <param name="lever">Its side.</param>
/// <param name="deceleration">The deceleration that the stop demands, SI; it slows down twice as fast.</param>
/// <param name="cycles">How many cycles the axis has to go on slowing down after the trip.</param>
/// <param name="negative">Whether the axis moves backwards.</param>
internal sealed class SlowingCalling(Bench bench, Subject by, ChannelLever lever, Fraction deceleration, int cycles, bool negative) : Calling
{
    private readonly int _memory = bench.Drive(by.Axis).Memory(Kind.Acceleration) + bench.Drive(by.Axis).Order(Kind.Acceleration);

    public override string? Unreachable => by.Unreachable(lever);

    public override bool CanBeAbsent => true;

    public override bool CanBeLost => false;

    public override (string Axis, string Monitor)? By => (by.Axis, by.Monitor);

    // The axis goes on slowing down.
    public override Target? Calls(string axis, Fraction speed, Kind root) => axis == by.Axis ? null : new(speed);

    public override void Leave(Script script) => lever.Rest(script);

    public override int Call(Script script)
    {
        var step = 2 * deceleration * bench.Clock.Period / 1_000_000_000;
        var speed = 2 * (bench.Plan.Axes[by.Axis].Standstill?.Exact ?? Fraction.Zero) + (by.Delay + by.Filter + 2 * _memory + cycles + 2) * step
            + (lever is { IsUpperLimit: true, Limit: var limit } ? limit.Abs() : Fraction.Zero);
        if (!lever.IsPast(negative ? -speed : speed)) throw new VectorException($"{by.Axis}.{by.Monitor} has to trip first, and does not while the axis slows down from a speed that is high enough");
        void Go(int count)
        {
            for (var i = 0; i < count; i++, speed -= step)
            {
                script.Want(by.Axis, Kind.Velocity, new(negative ? -speed : speed));
                script.Run(1);
            }
        }

        var (from, asked) = (script.Count, 0);
        if (by.Calling.CanBeAbsent)
        {
            // It slows down evenly before anything is asked for, so that no estimator sees a jump any more.
            by.Calling.Leave(script);
            script.Want(by.Axis, Kind.Velocity, new(negative ? -speed : speed));
            script.Run(1);
            Go(_memory);
            from = asked = script.Count;
            by.Calling.Call(script);
        }
        else if (from == 0)
        {
            script.Start(by.Axis, Kind.Velocity, negative ? -speed : speed);
            by.Calling.Call(script);
            from = lever.Order;
        }

        var trip = Math.Max(from, asked + by.Delay) + by.Filter;
        Go(trip - script.Count);
        script.Want(by.Axis, Kind.Acceleration, new(negative ? 2 * deceleration : -2 * deceleration));
        return trip;
    }
}
