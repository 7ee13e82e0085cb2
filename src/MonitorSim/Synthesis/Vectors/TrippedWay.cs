namespace MonitorSim.Synthesis.Vectors;

/// <summary>A way to make a monitor trip, for vectors about what comes after.</summary>
/// <param name="Bench">The plan.</param>
/// <param name="Subject">The monitor.</param>
/// <param name="Lever">The side that trips.</param>
/// <param name="Standing">Whether the other axes of the group stand from the trip on.</param>
internal sealed record TrippedWay(Bench Bench, Subject Subject, Lever Lever, bool Standing)
{
    public string? Unreachable => Subject.Unreachable(Lever);

    /// <summary>All ways of a monitor, the best first: by each side, by positive values before negative ones.</summary>
    public static IReadOnlyList<TrippedWay> All(Bench bench, string axis, string monitor)
    {
        var plan = bench.Plan.Axes[axis].Monitors.FirstOrDefault(one => one.Name == monitor);
        var preludes = new Preludes(bench);
        var chains = bench.Chains(axis).Concat(bench.Chains(axis, negative: true)).Where(chain => chain.Subject.Monitor == monitor)
            .SelectMany(chain => (plan is null ? [chain.Subject] : preludes.Of(chain.Subject, plan, chain.Lever.Level)).Select(subject => (Subject: subject, chain.Lever))).ToList();
        bool[] standing = bench.GroupOf(axis).Count > 1 ? [true, false] : [false];
        List<TrippedWay> ways = [.. chains.SelectMany(chain => standing.Select(stand => new TrippedWay(bench, chain.Subject, chain.Lever, stand)))];
        return ways.Exists(way => way.Unreachable is null) ? ways.FindAll(way => way.Unreachable is null) : ways;
    }

    /// <summary>Writes a vector up to the trip.</summary>
    /// <param name="setUp">What to do before the cycle of the trip is written.</param>
    /// <returns>The vector and the cycle of the trip, its last one.</returns>
    public (Script Script, int Cycle) Trip(Action<Script>? setUp = null)
    {
        var script = Bench.Begin(Subject.Axis);
        Lever.Prepare(script, 4 * (Subject.Delay + Subject.Filter) + 2 * Lever.LeadIn + 60);
        Lever.Rest(script);
        script.Run(1 + Lever.Memory);
        Calling calling = new TripCalling(Subject, Lever);
        if (Standing) calling = new StandingCalling(Bench, Subject.Axis, calling);
        var trip = calling.Call(script);
        setUp?.Invoke(script);
        script.Run(1);
        return (script, trip);
    }
}
