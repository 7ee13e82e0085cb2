using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What a trip demands, of its own axis and of every axis of its group, at the very cycle of the trip.</summary>
internal sealed class ReactionFamily(Bench bench, Subject subject, Lever lever)
{
    private readonly Aftermath _after = new(bench, subject.Axis);

    public void Make(Harvest harvest)
    {
        List<Branch> branches = [new(subject.Axis, subject.Monitor, null, null, "reaction", UserWord)];
        if (subject.Reaction != Reaction.None)
            branches.AddRange(_after.Group.Where(member => member != subject.Axis).Select(member => new Branch(member, $"{subject.Axis}.{subject.Monitor}", null, null, "group", UserWord)));
        if ((subject.Calling.Unreachable ?? lever.Unreachable) is { } why) harvest.Miss(why, branches);
        else harvest.Try(branches, MakeReaction);
    }

    private string UserWord => Choice.Name(subject.Reaction);

    private Draft MakeReaction()
    {
        var script = bench.Begin(subject.Axis);
        lever.Prepare(script, 2 * (subject.Delay + subject.Filter) + lever.LeadIn + 20);
        lever.Rest(script);
        script.Run(1 + lever.Memory);
        new TripCalling(subject, lever).Call(script);
        script.Run(1);
        var trip = script.Count - 1;
        lever.Rest(script);
        script.Run(1);
        _after.Stand(script);
        script.Run(_after.Cycles);
        var draft = new Draft($"{subject.Monitor} reaction", $"It trips, and at that cycle {(subject.Reaction == Reaction.None ? "nothing changes" : "the axis and its group begin to stop")}; then everything stands.", script)
            { MayBeDisturbed = true }.Mean(subject.Axis, subject.Monitor, lever.Side, trip);
        foreach (var member in subject.Reaction == Reaction.None ? [subject.Axis] : _after.Group)
        {
            draft.States.Add((member, trip - 1, AxisState.Running));
            draft.States.Add((member, trip, _after.At(script, member, subject.Reaction, trip)));
            draft.States.Add((member, script.Count - 1, Aftermath.EndOf(subject.Reaction)));
        }

        return draft;
    }
}
