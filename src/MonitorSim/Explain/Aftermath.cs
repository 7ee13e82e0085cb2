namespace MonitorSim.Explain;

/// <summary>What an axis did after a trip: its states with their causes, up to where it runs again, and the acknowledgement.</summary>
internal static class Aftermath
{
    // A longer story belongs to the trips that come later.
    private const int MostChanges = 4;

    public static IEnumerable<string> Of(Trip trip, ReplayResult result)
    {
        var changes = Changes(trip, result);
        var said = new List<string>();
        if (!changes.Any(change => change.Time == trip.Time)) said.Add(Unmoved(trip, changes.LastOrDefault(change => change.Time < trip.Time)?.State ?? AxisState.Running));
        said.AddRange(Told(trip, result).Select(change => $"At {Say.Seconds(change.Time)} {trip.Axis} {StateStory.Change(trip.Axis, change, result, trip)}."));
        if (UpToRunning(trip, changes).Skip(MostChanges).Any()) said.Add("More changes follow.");
        yield return "  " + string.Join(" ", said);
        yield return "  " + Acknowledgement(trip, result, changes);
    }

    /// <summary>The changes that the story of a trip tells.</summary>
    public static IEnumerable<StateChange> Told(Trip trip, ReplayResult result) => UpToRunning(trip, Changes(trip, result)).Take(MostChanges);

    private static IReadOnlyList<StateChange> Changes(Trip trip, ReplayResult result) => result.States.FirstOrDefault(axis => axis.Axis == trip.Axis)?.Changes ?? [];

    private static IEnumerable<StateChange> UpToRunning(Trip trip, IReadOnlyList<StateChange> changes)
    {
        foreach (var change in changes.Where(change => change.Time >= trip.Time))
        {
            yield return change;
            if (change.State == AxisState.Running) yield break;
        }
    }

    private static string Unmoved(Trip trip, AxisState before)
    {
        var goesOn = before == AxisState.Running ? "goes on running" : Phrases.State(before);
        return trip.Reaction == Plans.Reaction.None
            ? $"The trip changes nothing at {trip.Axis}, which {goesOn}."
            : $"The trip is kept as a cause but changes nothing at once: {trip.Axis} already {goesOn}.";
    }

    private static string Acknowledgement(Trip trip, ReplayResult result, IReadOnlyList<StateChange> changes)
    {
        if (result.Plan.Acknowledge is null) return "The plan names no acknowledgement, so the trip stays latched.";
        var edges = result.Events.Where(e => e.Axis == trip.Axis && e.Source == "acknowledge" && e.Time > trip.Time).ToList();
        if (edges.Count == 0) return "No acknowledgement follows in this recording, so the trip stays latched.";
        var (ignored, taken) = (edges.TakeWhile(e => e.Event != "acknowledged").ToList(), edges.FirstOrDefault(e => e.Event == "acknowledged"));
        var early = ignored.Count == 0 ? "" : $"An acknowledgement at {Say.Seconds(ignored[0].Time)} is ignored because the axis, or one of its group, is still stopping. ";
        if (taken is null) return early + "No other follows that counts, so the trip stays latched.";
        var state = changes.LastOrDefault(change => change.Time <= taken.Time)?.State ?? AxisState.Running;
        var isSame = !changes.Any(change => change.Time == taken.Time) && state != AxisState.Running;
        return $"{early}{(early.Length == 0 ? "An acknowledgement comes" : "The one that counts comes")} at {Say.Seconds(taken.Time)}" + (isSame ? $"; {trip.Axis} stays as it is, for something still asks for it." : ".");
    }
}
