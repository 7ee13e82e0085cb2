namespace MonitorSim.Explain;

/// <summary>Says a result in sentences that can be read aloud: what was asked, when watching began, what was seen, why that is a trip, what would have
/// avoided it, and what the axis then did; then what other axes did, the room of what did not trip, what the recording proves nothing about, and
/// what had been expected.</summary>
public static class Explanation
{
    private const int MostTrips = 20;

    /// <summary>The sentences, one or more a line; an empty line between stories. After 20 trips only their number is said.</summary>
    /// <param name="result">The result of a replay.</param>
    public static IReadOnlyList<string> Lines(ReplayResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var units = new UserUnits(result.Plan);
        var lines = new List<string> { Head(result) };
        var told = new HashSet<StateChange>(ReferenceEqualityComparer.Instance);
        foreach (var trip in result.Trips.Take(MostTrips))
        {
            lines.AddRange(["", .. TripStory.Of(trip, result, units), .. Aftermath.Of(trip, result)]);
            told.UnionWith(Aftermath.Told(trip, result));
        }

        if (result.Trips.Count > MostTrips)
            lines.AddRange(["", $"And {Say.Count(result.Trips.Count - MostTrips, "more trip")}, which the JSON result lists."]);
        lines.Add("");
        lines.AddRange(StateStory.Untold(result, told));
        lines.AddRange(MotionStory.Of(result));
        lines.AddRange(result.Coverage.SelectMany(coverage => RoomStory.Of(coverage, result, units)));
        lines.AddRange(result.Expect.Select(line => $"{(line.Holds ? "As expected" : "Not as expected")}: {line.Because}."));
        lines.AddRange(result.Warnings.Select(warning => $"Note: {warning}."));
        lines.AddRange(["", Cautions.Text]);
        return lines;
    }

    private static string Head(ReplayResult result) =>
        $"{(result.Plan.Title.Length == 0 ? "The plan" : result.Plan.Title)}, on {result.Trace} ({Say.Seconds(result.Duration)}): "
        + (result.IsTripped ? $"{Say.Count(result.Trips.Count, "trip")}." : "nothing tripped.");
}
