using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>SS1 or SS2 by ramp: the speed exactly at the ramp and its tolerance all the way down, and one step past it.</summary>
internal sealed class RampFamily(Bench bench, string axis, string name, RampStopPlan stop)
{
    private const int LongestRamp = 4000;

    private readonly Fraction _standstill = bench.Plan.Axes[axis].Standstill?.Exact ?? Fraction.Zero;
    private readonly int _settle = bench.Clock.Cycles(stop.Settle), _delay = bench.Clock.Cycles(stop.Delay);

    public void Make(Harvest harvest)
    {
        var ways = new Demands(bench).Ways(axis, name, bench.RootOf(axis, Kind.Velocity));
        List<Branch> allowed = [Of("limit", "just allowed"), Of("standstill", "not compared")];
        if (_delay > 0) allowed.Add(Of("delay", "reached"));
        if (ways[0].Unreachable is { } why)
        {
            harvest.Miss(why, [.. allowed, Of("limit", "just past"), Of("limit", "just past, negative")]);
            return;
        }

        harvest.Try(allowed, ways.Select(way => (Func<Draft>)(() => MakeAllowed(way))));
        harvest.Try([Of("limit", "just past")], ways.Select(way => (Func<Draft>)(() => MakePast(way, negative: false))));
        harvest.Try([Of("limit", "just past, negative")], ways.Select(way => (Func<Draft>)(() => MakePast(way, negative: true))));
    }

    private Branch Of(string rule, string from) => new(axis, name, "ramp", null, rule, from);

    /// <summary>A speed that the ramp takes some cycles to bring down.</summary>
    private Fraction Speed => 2 * _standstill + 8 * stop.Deceleration!.Exact * bench.Clock.Period / 1_000_000_000;

    private Draft MakeAllowed(Calling calling)
    {
        var run = new StopRun(bench, axis, stop, calling, Speed);
        var last = stop.TimeLimit is { } limit ? (int)(limit.Nanoseconds / bench.Clock.Period) - _settle : int.MaxValue;
        while (run.IsMovingAt(run.Elapsed) && run.Elapsed < last)
        {
            if (run.Elapsed > LongestRamp) throw new VectorException("the ramp takes too many cycles to reach standstill");
            run.Go(run.RampAt(run.Elapsed));
        }

        run.Stand(_settle + 3);
        return run.Draft($"{name} ramp allowed", "The speed is all the way down exactly at the ramp with its tolerance, and then stands although the ramp goes on below: nothing trips.")
            .Mean(axis, name, "ramp");
    }

    private Draft MakePast(Calling calling, bool negative)
    {
        var run = new StopRun(bench, axis, stop, calling, Speed, negative);
        if (!run.IsMoving) throw new VectorException("what calls for the stop leaves the axis standing as it begins, and at standstill no ramp is compared");
        while (run.Elapsed < _delay + 2) run.Go(run.RampAt(run.Elapsed));
        if (!run.IsMovingAt(run.Elapsed)) throw new VectorException("the ramp reaches standstill within two cycles");
        var trip = run.Script.Count;
        run.Go(run.RampAt(run.Elapsed), past: true);
        run.Stand(3);
        var draft = run.Draft($"{name} ramp trips{(negative ? " negative" : "")}", "The speed is at the ramp with its tolerance, then one step past it: it trips at that cycle, and the torque is off at once.")
            .Mean(axis, name, "ramp", trip);
        draft.States.Add((axis, trip, AxisState.TorqueOff));
        return draft;
    }
}
