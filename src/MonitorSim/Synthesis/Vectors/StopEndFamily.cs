using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>How SS1 and SS2 end: by time, or by standstill that lasts; and the time that they may take.</summary>
internal sealed class StopEndFamily(Bench bench, string axis, string name, RampStopPlan stop)
{
    private readonly int _settle = bench.Clock.Cycles(stop.Settle);
    private readonly AxisPlan _plan = bench.Plan.Axes[axis];

    private AxisState Stopping => name == "SS1" ? AxisState.StoppingToOff : AxisState.StoppingToHold;
    private AxisState Ended => name == "SS1" ? AxisState.TorqueOff : AxisState.Holding;

    /// <summary>Cycles from the end of the stop to its state: what the brake takes.</summary>
    private int Brake => name == "SS1" && _plan.Stops.Sbc is { } sbc ? bench.Clock.Cycles(sbc.Apply) : 0;

    public void Make(Harvest harvest)
    {
        var demands = new Demands(bench);
        var ways = stop.Variant == StopVariant.Deceleration
            ? demands.SlowingWays(axis, name, stop, 2 * _settle + bench.Clock.Cycles(stop.TimeLimit) + bench.Clock.Cycles(stop.Filter) + 20, negative: false)
            : demands.Ways(axis, name, stop.Variant == StopVariant.Time ? null : bench.RootOf(axis, Kind.Velocity));
        var ending = stop.Variant == StopVariant.Time ? ByTimeBranches() : StandstillBranches();
        List<Branch> limited = stop.TimeLimit is null ? [] : [Of("time limit", "just allowed"), Of("time limit", "just past")];
        if (ways[0].Unreachable is { } why)
        {
            harvest.Miss(why, [.. ending, .. limited]);
            return;
        }

        harvest.Try(ending, ways.Select(way => (Func<Draft>)(() => stop.Variant == StopVariant.Time ? ByTime(way) : ByStandstill(way))));
        foreach (var branch in limited) harvest.Try([branch], ways.Select(way => (Func<Draft>)(() => WithinTime(way, late: branch == limited[1]))));
    }

    private Branch Of(string rule, string from) => new(axis, name, null, null, rule, from);

    private IReadOnlyList<Branch> ByTimeBranches() => bench.Clock.Cycles(stop.Time) > 0 ? [Of("end", "one cycle less"), Of("end", "reached"), .. BrakeBranches()] : [Of("end", "reached"), .. BrakeBranches()];

    private IEnumerable<Branch> BrakeBranches() => Brake > 0 ? [Of("brake", "one cycle less"), Of("brake", "applied")] : [];

    private List<Branch> StandstillBranches()
    {
        List<Branch> branches = [Of("standstill", "just above"), Of("standstill", "at"), Of("end", "reached"), .. BrakeBranches()];
        if (_settle > 0) branches.Add(Of("settle", "one cycle less"));
        return branches;
    }

    private Draft ByTime(Calling calling)
    {
        var run = new StopRun(bench, axis, stop, calling, Fraction.Zero);
        var end = run.Begin + bench.Clock.Cycles(stop.Time);
        run.Script.Run(end + Brake + 3 - run.Script.Count);
        return Ending(run.Draft($"{name} ends", "The stop begins and ends when its time has passed, not a cycle earlier."), run.Begin, end);
    }

    /// <summary>Standstill that is interrupted one cycle too early, then standstill that lasts.</summary>
    private Draft ByStandstill(Calling calling)
    {
        var run = new StopRun(bench, axis, stop, calling, Above(2 * _settle + 6));
        if (!run.IsMoving) throw new VectorException("what calls for the stop keeps the axis below its standstill speed: the stop begins standing");
        SlowDown(run, 1);
        if (_settle > 0)
        {
            run.Stand(_settle);
            if (CanBounce(run)) run.Stand(1, justAbove: true);
        }
        else if (CanBounce(run))
        {
            run.Stand(2, justAbove: true);
        }

        var end = (_settle > 0 && !CanBounce(run) ? run.Script.Count - _settle : run.Script.Count) + _settle;
        run.Stand(end + Brake + 3 - run.Script.Count);
        return Ending(run.Draft($"{name} ends", "Just above the standstill speed nothing ends; at it the stop ends as soon as that has lasted without interruption."), run.Begin, end);
    }

    /// <summary>The stop would end at the first cycle after the time limit, or a cycle earlier.</summary>
    private Draft WithinTime(Calling calling, bool late)
    {
        var first = (int)(stop.TimeLimit!.Nanoseconds / bench.Clock.Period) + 1;
        var trips = StopEnd.CyclesAllowed(bench, stop) + 1;
        var end = late ? trips : first - 1;
        var endsThere = end > _settle;
        if (!endsThere && !late) throw new VectorException("standstill must last longer than the time limit allows");
        var run = new StopRun(bench, axis, stop, calling, Above(trips + 4));
        SlowDown(run, end - _settle - run.Elapsed);
        run.Stand(_settle + Brake + 4);
        var draft = run.Draft($"{name} time limit {(late ? "passed" : "kept")}", late
            ? $"{(endsThere ? "The stop would end at the very cycle at which its time limit is passed" : "Standstill has not lasted long enough when the time limit is passed")}: it trips, and the torque is off at once."
            : "The stop ends at the last cycle that its time limit allows.");
        return late
            ? After(draft.Mean(axis, name, "timeLimit", run.Begin + trips), run.Begin + trips, AxisState.TorqueOff)
            : After(draft.Mean(axis, name, "timeLimit"), run.Begin + end + Brake, Ended);
    }

    private static Draft After(Draft draft, int cycle, AxisState state)
    {
        draft.States.Add((draft.Meant.First().Axis, cycle, state));
        return draft;
    }

    /// <summary>A speed from which the demanded deceleration does not reach standstill within so many cycles.</summary>
    private Fraction Above(int cycles) =>
        3 * (_plan.Standstill?.Exact ?? Fraction.Zero) + 3 * stop.Deceleration!.Exact * cycles * bench.Clock.Period / 1_000_000_000;

    private void SlowDown(StopRun run, int cycles)
    {
        if (cycles <= 0) return;
        if (stop.Variant == StopVariant.Ramp) run.Stand(cycles, justAbove: true);
        else if (!run.IsAccelerationFree) run.Slow(cycles);
        else run.Script.Run(cycles);
    }

    /// <summary>Whether the speed may rise by a step without a trip: variant r must still allow it then, variant d sees it where the acceleration follows from
    /// the speed; and standstill that begins anew must still last within the time limit.</summary>
    private bool CanBounce(StopRun run) => (stop.Variant == StopVariant.Ramp ? run.IsMovingAt(_settle + 3) : run.IsAccelerationFree) && StopEnd.CyclesAllowed(bench, stop) >= 2 * _settle + 4;

    private Draft Ending(Draft draft, int begin, int end)
    {
        draft.Mean(axis, name, "");
        if (end + Brake > begin) draft.States.Add((axis, end + Brake - 1, Stopping));
        draft.States.Add((axis, end + Brake, Ended));
        return draft;
    }
}
