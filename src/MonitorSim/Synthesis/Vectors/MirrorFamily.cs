namespace MonitorSim.Synthesis.Vectors;

/// <summary>The other sign of a magnitude: at the limit, then past it for as long as the filter.</summary>
internal sealed class MirrorFamily(Bench bench, Subject subject, Lever mirrored)
{
    /// <param name="harvest">Takes the vector.</param>
    /// <param name="ways">The same chain, called for in one way each; the best first.</param>
    public static void Make(Harvest harvest, params IReadOnlyList<MirrorFamily> ways)
    {
        var branches = ways[0].Branches();
        if (ways[0].Unreachable is { } why) harvest.Miss(why, branches);
        else harvest.Try(branches, ways.Select(way => (Func<Draft>)way.MakeMirrored));
    }

    private Branch[] Branches() => [subject.Branch(mirrored, "limit", "just allowed, negative"), subject.Branch(mirrored, "limit", "just past, negative")];

    private string? Unreachable => subject.Calling.Unreachable ?? mirrored.Unreachable ?? (mirrored.Room <= subject.Filter + 2 ? "its filter lasts longer than this side is compared" : null);

    private Draft MakeMirrored()
    {
        var script = bench.Begin(subject.Axis);
        mirrored.Prepare(script, 2 * (subject.Delay + subject.Filter) + mirrored.LeadIn + 20);
        mirrored.Rest(script);
        var begin = subject.Call(script, mirrored);
        mirrored.Rest(script);
        script.Run(Math.Max(begin + subject.Delay - script.Count, mirrored.HasReference ? 0 : mirrored.Order) + 1 + mirrored.LeadIn);
        mirrored.Allow(script);
        script.Run(1);
        var from = script.Count;
        mirrored.Exceed(script);
        script.Run(subject.Filter + 1);
        mirrored.Allow(script);
        script.Run(2);
        return subject.Draft(mirrored, "negative", "The same limit met by values of the other sign: at it for a cycle, then past it for exactly as long as the filter.", script, begin, from + subject.Filter);
    }
}
