using MonitorSim.Explain;
using MonitorSim.Tuning;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary>What all phases of the cycle say, as tables: what each limit would have to be at the worst of them, and when the first trip comes.</summary>
internal static class PhaseTables
{
    private const int MostRows = 40;

    public static void Write(IAnsiConsole console, TuneResult result, Func<string, string> name)
    {
        console.WriteLine("A cycle is not in step with the motion. What the limits would have to be at the worst phase of all, and what the best one would have got away with:");
        console.Write(Limits(result, name));
        var trips = result.Phases.Where(phases => phases.Outcome.Earliest is not null)
            .OrderByDescending(phases => phases.Outcome.DependsOnPhase).ThenByDescending(phases => phases.Outcome.Latest - phases.Outcome.Earliest).ToList();
        if (trips.Count > 0)
        {
            console.WriteLine("The first trip of each recording over all phases, at the earliest and at the latest:");
            console.Write(Trips(trips, name));
        }

        if (trips.Count > MostRows) console.WriteLine($"… and {trips.Count - MostRows} more, all of them in --json and --csv.");
        if (trips.Count == 0) console.WriteLine("Nothing trips at any phase.");
        else if (trips.Count < result.Phases.Count) console.WriteLine($"{result.Phases.Count - trips.Count} of {result.Phases.Count} pairs of monitor and recording do not trip at any phase.");
    }

    private static Table Limits(TuneResult result, Func<string, string> name)
    {
        var table = Tables.Headed("monitor", "side", "limit", "needed at the worst phase", "recording", "phase", "needed at its best phase", "phase");
        foreach (var limit in result.Monitors)
        {
            var text = new TunedText(limit);
            var all = result.Phases.Where(phases => phases.Outcome.Axis == limit.Axis && phases.Outcome.Monitor == limit.Monitor)
                .SelectMany(phases => phases.Outcome.Limits.Where(one => one.Side == limit.Side && one.Level == limit.Level && one.Worst is not null).Select(one => (phases.Trace, Limit: one))).ToList();
            if (all.Count == 0) continue;
            var (trace, worst) = limit.IsLower ? all.MinBy(one => one.Limit.Worst) : all.MaxBy(one => one.Limit.Worst);
            table.AddRow(Tables.Cells(TunedText.Name(limit), limit.Side, limit.Written, text.Enough(worst.Worst), name(trace), Tables.Time(worst.WorstPhase), text.Enough(worst.Best), Tables.Time(worst.BestPhase)));
        }

        return table;
    }

    private static Table Trips(IEnumerable<RunPhases> trips, Func<string, string> name)
    {
        var table = Tables.Headed("monitor", "recording", "earliest", "at phase", "latest", "at phase", "phase without a trip");
        foreach (var (trace, outcome) in trips.Take(MostRows))
        {
            table.AddRow(Tables.Cells($"{outcome.Axis}.{outcome.Monitor}", name(trace), Tables.Time(outcome.Earliest), Tables.Time(outcome.EarliestPhase),
                Tables.Time(outcome.Latest), Tables.Time(outcome.LatestPhase), outcome.QuietPhase is { } quiet ? $"{Tables.Time(quiet)}: chance decides" : "none"));
        }

        return table;
    }
}
