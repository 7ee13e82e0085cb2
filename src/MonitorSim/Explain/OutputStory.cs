namespace MonitorSim.Explain;

/// <summary>When an output was on; one that switches often is counted, so that chatter shows.</summary>
internal static class OutputStory
{
    private const int MostStretches = 4;

    public static string Of(OutputTimeline output)
    {
        var stretches = Stretches(output.Edges).ToList();
        if (stretches.Count == 0) return "its output was never on in this recording.";
        if (stretches.Count <= MostStretches) return $"its output was on {string.Join(", ", stretches.Select(Spoken))}.";
        var shortest = stretches.Min(stretch => stretch.Until - stretch.From)!.Value;
        return $"its output came on {Say.Count(stretches.Count, "time")}, first at {Say.Seconds(stretches[0].From)}, last at {Say.Seconds(stretches[^1].From)}, for {Say.Duration(shortest)} at the shortest.";
    }

    private static IEnumerable<(decimal From, decimal? Until)> Stretches(IReadOnlyList<OutputEdge> edges)
    {
        for (var k = 0; k < edges.Count; k++)
            if (edges[k].On) yield return (edges[k].Time, k + 1 < edges.Count ? edges[k + 1].Time : null);
    }

    private static string Spoken((decimal From, decimal? Until) stretch) =>
        $"from {Say.Seconds(stretch.From)} {(stretch.Until is { } until ? "to " + Say.Seconds(until) : "on")}";
}
