using MonitorSim.Tuning;

namespace MonitorSim.Cli;

/// <summary>A tuning result as CSV files for spreadsheets: SI, one row a limit, one a step of a frontier, one a recording and limit.</summary>
internal static class TuneCsv
{
    public static void Write(Terminal terminal, TuneResult result, string folder)
    {
        ResultCsv.Table(terminal, Path.Combine(folder, "limits.csv"), ["axis", "monitor", "function", "side", "level", "unit", "written", "limit", "filter_s", "critical",
                "decidedBy", "from_s", "until_s", "filterAbove_s", "delayAbove_s", "noDelayHelps", "runs", "coverage", "confidence", "distributionFree", "normal", "runsNeeded", "reached", "roomFrom", "roomTo", "roomDecidedBy"],
            result.Monitors.Select(m => new object?[] { m.Axis, m.Monitor, m.Function, m.Side, m.Level, m.Unit, m.Written, m.Limit, m.Filter, m.Critical,
                m.Deciding?.Trace, m.Deciding?.From, m.Deciding?.Until, m.FilterAbove, m.DelayAbove, m.NoDelayHelps, m.Runs.Count(run => run.Critical is not null),
                m.Bounds.Coverage, m.Bounds.Confidence, m.Bounds.DistributionFree, m.Bounds.Normal, m.Bounds.RunsNeeded, m.Bounds.Reached, m.Room.From, m.Room.To, m.Room.DecidedBy }));
        ResultCsv.Table(terminal, Path.Combine(folder, "frontier.csv"), ["axis", "monitor", "side", "level", "unit", "filterUpTo_s", "limit", "from_s", "until_s", "trace"],
            result.Monitors.SelectMany(m => m.Frontier.Select(step => new object?[] { m.Axis, m.Monitor, m.Side, m.Level, m.Unit, step.Filter, step.Limit, step.From, step.Until, step.Trace })));
        if (result.Phases.Count > 0) Phases(terminal, result, folder);
        ResultCsv.Table(terminal, Path.Combine(folder, "runs.csv"), ["axis", "monitor", "side", "level", "unit", "trace", "critical"],
            result.Monitors.SelectMany(m => m.Runs.Select(run => new object?[] { m.Axis, m.Monitor, m.Side, m.Level, m.Unit, run.Trace, run.Critical })));
    }

    private static void Phases(Terminal terminal, TuneResult result, string folder)
    {
        ResultCsv.Table(terminal, Path.Combine(folder, "phases.csv"), ["axis", "monitor", "trace", "earliest_s", "earliestPhase_s", "latest_s", "latestPhase_s", "quietPhase_s"],
            result.Phases.Select(p => new object?[] { p.Outcome.Axis, p.Outcome.Monitor, p.Trace, p.Outcome.Earliest, p.Outcome.EarliestPhase, p.Outcome.Latest, p.Outcome.LatestPhase, p.Outcome.QuietPhase }));
        ResultCsv.Table(terminal, Path.Combine(folder, "phase-limits.csv"), ["axis", "monitor", "side", "level", "trace", "worst", "worstPhase_s", "best", "bestPhase_s"],
            result.Phases.SelectMany(p => p.Outcome.Limits.Select(l => new object?[] { p.Outcome.Axis, p.Outcome.Monitor, l.Side, l.Level, p.Trace, l.Worst, l.WorstPhase, l.Best, l.BestPhase })));
    }
}
