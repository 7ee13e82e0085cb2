using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What a trip demands, of its own axis and of every axis of its group, at the very cycle of the trip.</summary>
internal sealed class ReactionFamily(Bench bench, string axis, IReadOnlyList<TrippedWay> ways)
{
    private readonly Aftermath _after = new(bench, axis);

    public void Make(Harvest harvest)
    {
        var subject = ways[0].Subject;
        var word = Choice.Name(subject.Reaction);
        List<Branch> branches = [new(subject.Axis, subject.Monitor, null, null, "reaction", word)];
        if (subject.Reaction != Reaction.None)
            branches.AddRange(_after.Group.Where(member => member != subject.Axis).Select(member => new Branch(member, $"{subject.Axis}.{subject.Monitor}", null, null, "group", word)));
        if (ways[0].Unreachable is { } why) harvest.Miss(why, branches);
        else harvest.Try(branches, ways.Select(way => (Func<Draft>)(() => MakeReaction(way))));
    }

    private Draft MakeReaction(TrippedWay way)
    {
        var subject = way.Subject;
        var (script, trip) = way.Trip();
        way.Lever.Rest(script);
        _after.Stand(script);
        script.Run(_after.Cycles);
        var draft = new Draft($"{subject.Monitor} reaction", $"It trips, and at that cycle {(subject.Reaction == Reaction.None ? "nothing changes" : "the axis and its group begin to stop")}; then everything stands.", script)
            .Mean(subject.Axis, subject.Monitor, way.Lever.Side, trip);
        foreach (var member in subject.Reaction == Reaction.None ? [subject.Axis] : _after.Group)
        {
            draft.States.Add((member, trip - 1, AxisState.Running));
            draft.States.Add((member, trip, _after.At(script, member, subject.Reaction, trip)));
            draft.States.Add((member, script.Count - 1, Aftermath.EndOf(subject.Reaction)));
        }

        return draft;
    }
}
