namespace MonitorSim.Explain;

/// <summary>What an axis did, and why.</summary>
internal static class StateStory
{
    private const int MostChanges = 6;
    private static readonly string[] Stops = ["STO", "SS1", "SS2", "SOS"];

    /// <summary>A line an axis of those changes that no trip's story tells: stops on request, and those of other axes of a group.</summary>
    public static IEnumerable<string> Untold(ReplayResult result, IReadOnlySet<StateChange> told)
    {
        foreach (var axis in result.States)
        {
            var changes = axis.Changes.Where(change => !told.Contains(change)).ToList();
            if (changes.Count == 0) continue;
            var said = changes.Take(MostChanges).Select(change => $"at {Say.Seconds(change.Time)} it {Change(axis.Axis, change, result)}");
            yield return $"{axis.Axis}: {string.Join("; ", said)}{(changes.Count > MostChanges ? $"; and {Say.Count(changes.Count - MostChanges, "more change")}" : "")}.";
        }
    }

    /// <summary>What the axis does from then on, and why.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="change">The change.</param>
    /// <param name="result">The result.</param>
    /// <param name="trip">The trip whose story this is, if any.</param>
    public static string Change(string axis, StateChange change, ReplayResult result, Trip? trip = null) =>
        $"{Phrases.State(change.State)}, {Because(axis, change, result, trip)}";

    private static string Because(string axis, StateChange change, ReplayResult result, Trip? trip) => change.Cause switch
    {
        "standstill" => "having reached standstill",
        "time" => "the time of the stop being up" + Unwatched(axis, change, result),
        "released" => IsAcknowledged(axis, change.Time, result) ? "released by an acknowledgement" : "released because what asked for it has gone",
        var cause when trip is not null && change.Time == trip.Time && cause == $"{trip.Axis}.{trip.Monitor}" => "because of this trip",
        var cause when RequestOf(axis, change, result) is { } request => $"as its request, {request}, asks",
        var cause => $"because of {cause}" + (cause.StartsWith(axis + ".", StringComparison.Ordinal) ? "" : ", which is of its group"),
    };

    /// <summary>The text of a stop's own request, if that is the cause and not a violation of the stop.</summary>
    private static string? RequestOf(string axis, StateChange change, ReplayResult result) =>
        Array.Find(Stops, stop => change.Cause == $"{axis}.{stop}") is { } name && !result.Trips.Any(trip => trip.Axis == axis && trip.Monitor == name && trip.Time == change.Time)
            ? new MonitorFacts(result.Plan, axis, name).RequestText : null;

    /// <summary>A stop by time says nothing about whether the axis stands at its end.</summary>
    private static string Unwatched(string axis, StateChange change, ReplayResult result)
    {
        var stop = change.State == AxisState.Holding ? "SS2" : "SS1";
        return new MonitorFacts(result.Plan, axis, stop).IsByTime ? ", standing or not" : "";
    }

    private static bool IsAcknowledged(string axis, decimal time, ReplayResult result) =>
        result.Events.Any(e => e.Axis == axis && e.Time == time && e.Event == "acknowledged");
}
