using Fractions;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>Asks recordings what limits, filters and delays they need. It knows no trips and no acknowledgements, only requests and delays.</summary>
public static class Tune
{
    /// <summary>Tunes every limit of a plan's monitors over recordings.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="traces">The recordings, each a run.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">The plan is wrong, or a recording lacks what it needs.</exception>
    public static TuneResult Run(Plan plan, IReadOnlyList<Trace> traces, CancellationToken cancel = default)
    {
        PlanChecks.Require(plan);
        var parts = new IReadOnlyList<TunedLimit>[traces.Count];
        Parallel.For(0, traces.Count, new ParallelOptions { CancellationToken = cancel }, k => parts[k] = OfOne(plan, traces[k], cancel));
        return Join([.. parts.Select(part => new TuneResult(part))]);
    }

    /// <summary>Joins parts that were tuned apart: exact, in any order.</summary>
    public static TuneResult Join(IReadOnlyList<TuneResult> parts) =>
        new([.. parts.SelectMany(part => part.Monitors).GroupBy(limit => (limit.Axis, limit.Monitor, limit.Side, limit.Level)).Select(Join)]);

    private static TunedLimit Join(IEnumerable<TunedLimit> parts)
    {
        var limits = parts.ToList();
        var first = limits[0];
        var runs = limits.SelectMany(limit => limit.Runs).OrderBy(run => run.Trace, StringComparer.Ordinal).ToList();
        var criticals = runs.Select(run => run.Critical).OfType<double>().ToList();
        return first with
        {
            Critical = criticals.Count == 0 ? null : first.IsLower ? criticals.Min() : criticals.Max(),
            FilterAbove = limits.Max(limit => limit.FilterAbove),
            DelayAbove = limits.Max(limit => limit.DelayAbove),
            Frontier = Largest(limits.SelectMany(limit => limit.Frontier), first.IsLower),
            Runs = runs,
            Bounds = LimitBounds.Of(criticals, first.IsLower),
        };
    }

    /// <summary>The pointwise largest of staircases: from the longest filter down, only a higher limit is a step.</summary>
    private static List<FrontierStep> Largest(IEnumerable<FrontierStep> steps, bool isLower)
    {
        var sign = isLower ? -1 : 1;
        var kept = new List<FrontierStep>();
        foreach (var step in steps.OrderByDescending(s => s.Filter).ThenByDescending(s => sign * s.Limit).ThenBy(s => s.Trace, StringComparer.Ordinal).ThenBy(s => s.From))
            if (kept.Count == 0 || sign * step.Limit > sign * kept[^1].Limit) kept.Add(step);
        kept.Reverse();
        return kept;
    }

    private static List<TunedLimit> OfOne(Plan plan, Trace trace, CancellationToken cancel)
    {
        var engine = Replay.RunEngine(plan, new Inputs(plan, trace), cancel);
        var found = new List<TunedLimit>();
        foreach (var run in engine.Runs.Where(run => !run.IsStop))
        {
            for (var s = 0; s < run.Sides.Count; s++)
                for (var level = 0; level < run.Sides[s].Limits.Count; level++) found.Add(OfLimit(run, s, level, engine, trace.Name));
        }

        return found;
    }

    private static TunedLimit OfLimit(MonitorRun run, int s, int level, Engine engine, string trace)
    {
        var side = run.Sides[s];
        var sweep = new SideSweep(run, s, engine.Clock);
        double? Shown(Fraction? value) => value is { } known ? ExactDouble.Nearest(side.Shown(known)) : null;
        var critical = Shown(sweep.Critical(level, run.Filter, engine.Done).Value?.Exact());
        return new()
        {
            Axis = run.Axis,
            Monitor = run.Name,
            Side = side.Name,
            Level = side.HasLevels ? level : null,
            Unit = side.Unit,
            Filter = Seconds.Of(run.Filter),
            Limit = Shown(side.Limits[level].Exact)!.Value,
            IsLower = side.IsLower,
            Critical = critical,
            FilterAbove = Seconds.Of(sweep.LongestRun(engine.Done)),
            DelayAbove = Seconds.Of(DelayAbove(run, s, engine)),
            Frontier = [.. sweep.Frontier(level, engine.Done).Select(step => new FrontierStep(Seconds.Of(step.Filter), Shown(step.Limit)!.Value,
                Seconds.Of(step.From), Seconds.Of(step.Until), trace))],
            Runs = [new(trace, critical)],
            Bounds = LimitBounds.Of(critical is { } value ? [value] : [], side.IsLower),
        };
    }

    private static long? DelayAbove(MonitorRun run, int side, Engine engine)
    {
        var longest = new LongestDelay(run, side, engine.Clock);
        long? above = null;
        foreach (var (from, until) in run.Track.Stretches(engine.Done))
        {
            var delay = longest.In(from, until, out var trips);
            if (trips && delay is null) return null;
            if (!(delay <= above)) above = delay ?? above;
        }

        return above;
    }
}
