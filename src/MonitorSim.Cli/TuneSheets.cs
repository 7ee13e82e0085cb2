using MonitorSim.Tuning;

namespace MonitorSim.Cli;

/// <summary>A tuning result as tables: SI, one row a limit, one a step of a frontier, one a recording and limit.</summary>
internal static class TuneSheets
{
    public static IReadOnlyList<Sheet> Of(TuneResult result)
    {
        List<Sheet> sheets =
        [
            new Sheet<TunedLimit>("limits", result.Monitors).Text("axis", m => m.Axis).Text("monitor", m => m.Monitor).Text("function", m => m.Function).Text("side", m => m.Side)
                .Count("level", m => m.Level).Text("unit", m => m.Unit).Text("written", m => m.Written).Number("limit", m => m.Limit).Seconds("filter_s", m => m.Filter)
                .Number("critical", m => m.Critical).Text("decidedBy", m => m.Deciding?.Trace).Seconds("from_s", m => m.Deciding?.From).Seconds("until_s", m => m.Deciding?.Until)
                .Seconds("filterAbove_s", m => m.FilterAbove).Seconds("delayAbove_s", m => m.DelayAbove).Flag("noDelayHelps", m => m.NoDelayHelps)
                .Count("runs", m => m.Runs.Count(run => run.Critical is not null)).Number("coverage", m => m.Bounds.Coverage).Number("confidence", m => m.Bounds.Confidence)
                .Number("distributionFree", m => m.Bounds.DistributionFree).Number("normal", m => m.Bounds.Normal).Count("runsNeeded", m => m.Bounds.RunsNeeded)
                .Number("reached", m => m.Bounds.Reached).Number("roomFrom", m => m.Room.From).Number("roomTo", m => m.Room.To).Text("roomDecidedBy", m => m.Room.DecidedBy),
            OfLimits("frontier", m => m.Frontier).Seconds("filterUpTo_s", f => f.Of.Filter).Number("limit", f => f.Of.Limit).Seconds("from_s", f => f.Of.From)
                .Seconds("until_s", f => f.Of.Until).Text("trace", f => f.Of.Trace),
            OfLimits("runs", m => m.Runs).Text("trace", r => r.Of.Trace).Number("critical", r => r.Of.Critical),
        ];
        if (result.Phases.Count > 0)
        {
            sheets.Add(new Sheet<RunPhases>("phases", result.Phases).Text("axis", p => p.Outcome.Axis).Text("monitor", p => p.Outcome.Monitor).Text("trace", p => p.Trace)
                .Seconds("earliest_s", p => p.Outcome.Earliest).Seconds("earliestPhase_s", p => p.Outcome.EarliestPhase).Seconds("latest_s", p => p.Outcome.Latest)
                .Seconds("latestPhase_s", p => p.Outcome.LatestPhase).Seconds("quietPhase_s", p => p.Outcome.QuietPhase));
            sheets.Add(new Sheet<(RunPhases Run, PhaseLimit Limit)>("phase-limits", result.Phases.SelectMany(p => p.Outcome.Limits.Select(limit => (p, limit))))
                .Text("axis", p => p.Run.Outcome.Axis).Text("monitor", p => p.Run.Outcome.Monitor).Text("side", p => p.Limit.Side).Count("level", p => p.Limit.Level)
                .Text("trace", p => p.Run.Trace).Number("worst", p => p.Limit.Worst).Seconds("worstPhase_s", p => p.Limit.WorstPhase).Number("best", p => p.Limit.Best)
                .Seconds("bestPhase_s", p => p.Limit.BestPhase));
        }

        return sheets;

        Sheet<(TunedLimit Limit, T Of)> OfLimits<T>(string name, Func<TunedLimit, IEnumerable<T>> parts) =>
            new Sheet<(TunedLimit Limit, T Of)>(name, result.Monitors.SelectMany(limit => parts(limit).Select(part => (limit, part)))).Text("axis", p => p.Limit.Axis)
                .Text("monitor", p => p.Limit.Monitor).Text("side", p => p.Limit.Side).Count("level", p => p.Limit.Level).Text("unit", p => p.Limit.Unit);
    }
}
