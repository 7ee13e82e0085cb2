using Fractions;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>Asks recordings what limits, filters and delays they need. It knows no trips and no acknowledgements, only requests and delays.</summary>
public static class Tune
{
    /// <summary>Tunes every limit of a plan's monitors over recordings.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="traces">The recordings, each a run; at least one.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">The plan is wrong, a recording lacks what it needs, or one is there twice.</exception>
    public static TuneResult Run(Plan plan, IReadOnlyList<Trace> traces, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(traces);
        if (traces.Count == 0) throw new InputException(new Problem("traces", "there is no recording", "give at least one"));
        PlanChecks.Require(plan);
        var parts = new TuneResult[traces.Count];
        var problems = new IReadOnlyList<Problem>[traces.Count];
        Parallel.For(0, traces.Count, new ParallelOptions { CancellationToken = cancel }, k =>
        {
            problems[k] = [];
            try
            {
                parts[k] = Part(plan, traces[k], traces[k].Name, cancel);
            }
            catch (InputException e)
            {
                problems[k] = e.Problems;
            }
        });
        if (problems.SelectMany(found => found).ToList() is { Count: > 0 } all) throw new InputException(all);
        return TuneJoin.Of(parts, k => traces[k].Name);
    }

    /// <summary>Joins parts that were tuned apart, each with recordings of its own: exact, in any order and grouping.</summary>
    /// <param name="parts">The parts; at least one.</param>
    /// <param name="names">What messages call them; null: by number.</param>
    /// <exception cref="InputException">No part, parts of different plans, or a recording that is in two of them.</exception>
    public static TuneResult Join(IReadOnlyList<TuneResult> parts, IReadOnlyList<string>? names = null)
    {
        ArgumentNullException.ThrowIfNull(parts);
        if (parts.Count == 0) throw new InputException(new Problem("parts", "there is nothing to join", "give at least one part"));
        return TuneJoin.Of(parts, k => names?[k] ?? FormattableString.Invariant($"part {k + 1}"));
    }

    /// <summary>Tunes one recording; the bounds are left for the join.</summary>
    internal static TuneResult Part(Plan plan, Trace trace, string name, CancellationToken cancel)
    {
        long longest = 0;
        for (var k = 1; k < trace.Count; k++) longest = Math.Max(longest, trace.Times[k] - trace.Times[k - 1]);
        return new()
        {
            Plan = new(plan.Title, plan.Sha256, Seconds.Of(plan.Cycle?.Nanoseconds), Seconds.Of(plan.InputDelay?.Nanoseconds ?? 0), Seconds.Of(plan.ReactionDelay?.Nanoseconds ?? 0)),
            Recordings = [new(name, trace.Sha256, trace.Count, Seconds.Of(trace.Times[^1]), Seconds.Of(longest))],
            Monitors = OfOne(plan, trace, name, cancel),
        };
    }

    private static List<TunedLimit> OfOne(Plan plan, Trace trace, string name, CancellationToken cancel)
    {
        var units = new UserUnits(plan);
        var engine = Replay.RunEngine(plan, new Inputs(plan, trace), cancel);
        var found = new List<TunedLimit>();
        foreach (var run in engine.Runs.Where(run => !run.IsStop))
        {
            for (var s = 0; s < run.Sides.Count; s++)
                for (var level = 0; level < run.Sides[s].Limits.Count; level++) found.Add(OfLimit(run, s, level, engine, name, units));
        }

        return found;
    }

    private static TunedLimit OfLimit(MonitorRun run, int s, int level, Engine engine, string trace, UserUnits units)
    {
        var side = run.Sides[s];
        var sweep = new SideSweep(run, s, engine.Clock);
        double? Shown(Fraction? value) => value is { } known ? ExactDouble.Nearest(side.Shown(known)) : null;
        var (delayAbove, noDelayHelps) = DelayAbove(run, s, engine);
        var critical = Shown(sweep.Critical(level, run.Filter, engine.Done).Value?.Exact());
        FrontierStep[] frontier = [.. sweep.Frontier(level, engine.Done).Select(step => new FrontierStep(Seconds.Of(step.Filter), Shown(step.Limit)!.Value, Seconds.Of(step.From), Seconds.Of(step.Until), trace))];
        return new()
        {
            Axis = run.Axis,
            Monitor = run.Name,
            Function = run.Function,
            Side = side.Name,
            Level = side.HasLevels ? level : null,
            Unit = side.Unit,
            Written = units.Limit(run.Axis, run.Name, side.Name, side.HasLevels ? level : null)?.ToString() ?? Unit.Parse(side.Unit).Format(side.Shown(side.Limits[level].Exact), 17),
            Reaction = run.Reaction,
            Filter = Seconds.Of(run.Filter),
            Limit = Shown(side.Limits[level].Exact)!.Value,
            Critical = critical,
            FilterAbove = Seconds.Of(sweep.LongestRun(engine.Done)),
            DelayAbove = Seconds.Of(delayAbove),
            NoDelayHelps = noDelayHelps,
            Frontier = frontier,
            Runs = [new(trace, critical) { Frontier = frontier }],
            Bounds = LimitBounds.Of([]),
        };
    }

    private static (long? Above, bool NoDelayHelps) DelayAbove(MonitorRun run, int side, Engine engine)
    {
        var longest = new LongestDelay(run, side, engine.Clock);
        long? above = null;
        foreach (var (from, until) in run.Track.Stretches(engine.Done))
        {
            var delay = longest.In(from, until, out var trips);
            if (trips && delay is null) return (null, true);
            if (!(delay <= above)) above = delay ?? above;
        }

        return (above, false);
    }
}
