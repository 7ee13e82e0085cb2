namespace MonitorSim.Synthesis.Vectors;

/// <summary>The other sign of a magnitude: at the limit, then past it for as long as the filter.</summary>
internal sealed class MirrorFamily(Bench bench, Subject subject, Lever mirrored)
{
    public void Make(Harvest harvest)
    {
        Branch[] branches = [subject.Branch(mirrored, "limit", "just allowed, negative"), subject.Branch(mirrored, "limit", "just past, negative")];
        if ((subject.Calling.Unreachable ?? mirrored.Unreachable) is { } why) harvest.Miss(why, branches);
        else if (mirrored.Room <= subject.Filter + 2) harvest.Miss("its filter lasts longer than this side is compared", branches);
        else harvest.Try(branches, MakeMirrored);
    }

    private Draft MakeMirrored()
    {
        var script = bench.Begin(subject.Axis);
        mirrored.Prepare(script, 2 * (subject.Delay + subject.Filter) + mirrored.LeadIn + 20);
        mirrored.Rest(script);
        subject.Calling.Call(script);
        script.Run(Math.Max(subject.Delay, mirrored.HasReference ? 0 : mirrored.Order) + 1 + mirrored.LeadIn);
        mirrored.Allow(script);
        script.Run(1);
        var from = script.Count;
        mirrored.Exceed(script);
        script.Run(subject.Filter + 1);
        mirrored.Allow(script);
        script.Run(2);
        return new Draft(subject.Title(mirrored, "negative"), "The same limit met by values of the other sign: at it for a cycle, then past it for exactly as long as the filter.", script)
            .Mean(subject.Axis, subject.Monitor, mirrored.Side, from + subject.Filter);
    }
}
