using System.Globalization;
using MonitorSim.Explain;
using MonitorSim.Tuning;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary>A tuning result as tables for people: what production needs, what would keep the present limits, how sure that is for the next run.</summary>
internal static class TuneTables
{
    public static void Write(Terminal terminal, bool noColor, TuneResult result, bool withRoom)
    {
        var console = Tables.Console(terminal, noColor);
        var count = result.Recordings.Count;
        console.WriteLine($"{result.Plan.Title} — {(count == 1 ? result.Recordings[0].Trace : $"{count} recordings, {result.Recordings[0].Trace} to {result.Recordings[^1].Trace}")}");
        console.WriteLine();
        console.WriteLine("What these recordings need at the present filter, and where that is decided:");
        console.Write(Needed(result));
        if (result.Plan.Cycle is not null && result.Phases.Count == 0) console.WriteLine("This is for the plan's own phase of the cycle; --phases says what the worst one needs.");
        console.WriteLine("What would keep the present limits, everything else unchanged:");
        console.Write(Kept(result));
        Sure(console, result);
        if (withRoom) Room(console, result);
        if (result.Phases.Count > 0) PhaseTables.Write(console, result, trace => Short(result, trace));
        console.WriteLine(Cautions.Text);
    }

    private static Table Needed(TuneResult result)
    {
        var table = Tables.Headed("monitor", "side", "filter", "limit", "needed", "headroom", "decided by", "from", "until");
        foreach (var limit in result.Monitors)
        {
            var (text, step) = (new TunedText(limit), limit.Deciding);
            table.AddRow(Tables.Cells(TunedText.Name(limit), limit.Side, Tables.Time(limit.Filter), limit.Written, text.Enough(limit.Critical), text.Headroom(),
                step is null ? Unchallenged(limit) : Short(result, step.Trace), step is null ? "" : Tables.Time(step.From), step is null ? "" : Tables.Time(step.Until)));
        }

        return table;
    }

    private static Table Kept(TuneResult result)
    {
        var table = Tables.Headed("monitor", "side", "limit", "filter now", "filter that keeps it", "delay that keeps it");
        foreach (var limit in result.Monitors.Where(limit => limit.Critical is not null || limit.FilterAbove is not null || limit.DelayAbove is not null))
        {
            table.AddRow(Tables.Cells(TunedText.Name(limit), limit.Side, limit.Written, Tables.Time(limit.Filter),
                limit.FilterAbove is { } filter ? $"longer than {Tables.Time(filter)}" : "any",
                limit.NoDelayHelps ? "none: even the last start trips" : limit.DelayAbove is { } delay ? $"longer than {Tables.Time(delay)}" : "any"));
        }

        return table;
    }

    private static void Sure(IAnsiConsole console, TuneResult result)
    {
        var bounds = result.Monitors.Select(limit => limit.Bounds).FirstOrDefault();
        if (bounds is null) return;
        console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"The next run: a limit that {bounds.Coverage * 100:0.##} % of future runs stay within, with {bounds.Confidence * 100:0.##} % confidence (of {bounds.RunsNeeded} runs the most that one needed is such a limit):"));
        var table = Tables.Headed("monitor", "side", "runs", "needed so far", "confidence that it is one", "if normally distributed");
        foreach (var limit in result.Monitors.Where(limit => limit.Critical is not null))
        {
            var text = new TunedText(limit);
            table.AddRow(Tables.Cells(TunedText.Name(limit), limit.Side, limit.Runs.Count(run => run.Critical is not null).ToString(CultureInfo.InvariantCulture), text.Enough(limit.Critical),
                Percent(limit.Bounds.Reached), limit.Bounds.Normal is { } normal ? text.Enough(normal) : "needs 2 runs"));
        }

        console.Write(table);
        console.WriteLine("This holds for independent runs of the same programme that are alike: windows of one recording are not independent runs.");
        var drifts = result.Monitors.Where(limit => limit.Trend is { IsClear: true })
            .Select(limit => string.Create(CultureInfo.InvariantCulture, $"{TunedText.Name(limit)}, {limit.Side} ({(limit.Trend!.Tau > 0 ? "rises" : "falls")}, Kendall's tau {limit.Trend.Tau:0.00})")).ToList();
        if (drifts.Count > 0) console.WriteLine($"CAUTION: in the order of their names, what runs need drifts, so that they are not alike and the bounds are no promise for the next one: {string.Join("; ", drifts)}.");
    }

    private static void Room(IAnsiConsole console, TuneResult result)
    {
        console.WriteLine("The room of each limit, from what production needs to what the hazard allows:");
        var table = Tables.Headed("monitor", "side", "production needs", "limit", "hazard allows", "room");
        foreach (var limit in result.Monitors.Where(limit => limit.Room.From is not null || limit.Room.DecidedBy is not null))
        {
            var (text, room) = (new TunedText(limit), limit.Room);
            table.AddRow(Tables.Cells(TunedText.Name(limit), limit.Side, text.Enough(room.From), limit.Written,
                room.DecidedBy is null ? "not asked" : room.To is null ? "no limit" : text.AtMost(room.To), room.IsThere is null ? "–" : room.Size is { } size ? text.Difference(size) : "none"));
        }

        console.Write(table);
        foreach (var line in LimitRoomStory.Lines(result)) console.WriteLine(line);
        if (result.Monitors.Any(limit => limit.Room.Chain is not null))
            console.WriteLine("These are figures for design: how long and how far the real machine takes to stop is measured on it, and K and C come from the standard that applies.");
    }

    private static string Unchallenged(TunedLimit limit) => limit.Filter > 0 && limit.Frontier.Count > 0 ? "never compared for so long" : "never compared: this proves nothing";

    private static string Percent(double share) => (Math.Floor(share * 1000) / 10).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    /// <summary>A recording's file name, where that is enough to tell it apart.</summary>
    private static string Short(TuneResult result, string trace)
    {
        var name = Path.GetFileName(trace);
        return result.Recordings.Count(recording => Path.GetFileName(recording.Trace) == name) == 1 ? name : trace;
    }
}
