using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>When the move of SLI ends: the last cycle at which the increment is compared, and the cycle whose position the window counts from.</summary>
internal sealed class SliFamily(Bench bench, Subject subject, Sli sli)
{
    private readonly int _move = bench.Clock.Cycles(sli.MoveTime);

    public void Make(Harvest harvest)
    {
        if (sli.MoveTime is null) return;
        Branch within = new(subject.Axis, subject.Monitor, "increment", null, "move time", "one cycle less"), after = new(subject.Axis, subject.Monitor, "increment", null, "move time", "reached");
        var why = subject.Calling.Unreachable ?? Lever.Unreachable ?? (_move <= subject.Filter + 1 ? "its filter lasts longer than the move" : null);
        if (why is not null)
        {
            harvest.Miss(why, within, after);
            return;
        }

        harvest.Try([within], () => MakeMoved(late: 0));
        harvest.Try([after], () => MakeMoved(late: 1));
    }

    private SliLever Lever => new(bench, subject.Axis, "increment", sli.Increment.Exact, _move, negative: false);

    /// <summary>Past the increment for as long as the filter, so that its last cycle is the last of the move, or the one after it.</summary>
    private Draft MakeMoved(int late)
    {
        var lever = Lever;
        var script = bench.Begin(subject.Axis);
        lever.Prepare(script, _move);
        lever.Rest(script);
        subject.Calling.Call(script);
        script.Run(subject.Delay + _move - subject.Filter - 1 + late);
        var trip = script.Count + subject.Filter;
        lever.Exceed(script);
        script.Run(subject.Filter + 4);
        return late == 0
            ? new Draft($"{subject.Monitor} end of move", "Past the increment so late that the filter is over at the last cycle of the move: it trips.", script).Mean(subject.Axis, subject.Monitor, "increment", trip)
            : new Draft($"{subject.Monitor} after the move", "Past the increment one cycle later: the filter would be over at the first cycle after the move, where the increment is not compared any more.", script).Mean(subject.Axis, subject.Monitor, "increment");
    }
}
