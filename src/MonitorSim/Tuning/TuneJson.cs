using System.Text.Json;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>Writes tuning results as JSON: camelCase, SI, times in seconds. <see cref="TuneReader"/> reads it back without losing a bit.</summary>
public static class TuneJson
{
    /// <summary>Writes the result as UTF-8 JSON.</summary>
    public static void Write(TuneResult result, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, ResultJson.Layout);
        json.WriteStartObject();
        json.WriteNumber("tune", 1);
        json.WriteStartObject("plan");
        json.WriteString("title", result.Plan.Title);
        json.WriteString("sha256", result.Plan.Sha256);
        json.WriteOptional("cycle", result.Plan.Cycle);
        json.WriteNumber("inputDelay", result.Plan.InputDelay);
        json.WriteNumber("reactionDelay", result.Plan.ReactionDelay);
        json.WriteEndObject();
        json.WriteList("recordings", result.Recordings, (w, recording) =>
        {
            w.WriteString("trace", recording.Trace);
            w.WriteString("sha256", recording.Sha256);
            w.WriteNumber("samples", recording.Samples);
            w.WriteNumber("duration", recording.Duration);
            w.WriteNumber("longestStep", recording.LongestStep);
        });
        json.WriteList("monitors", result.Monitors, WriteLimit);
        json.WriteList("phases", result.Phases, (w, phases) =>
        {
            w.WriteString("trace", phases.Trace);
            w.WriteString("axis", phases.Outcome.Axis);
            w.WriteString("monitor", phases.Outcome.Monitor);
            w.WriteOptional("earliest", phases.Outcome.Earliest);
            w.WriteOptional("earliestPhase", phases.Outcome.EarliestPhase);
            w.WriteOptional("latest", phases.Outcome.Latest);
            w.WriteOptional("latestPhase", phases.Outcome.LatestPhase);
            w.WriteOptional("quietPhase", phases.Outcome.QuietPhase);
            w.WriteList("limits", phases.Outcome.Limits, (v, limit) =>
            {
                v.WriteString("side", limit.Side);
                v.WriteOptional("level", limit.Level);
                v.WriteOptional("worst", limit.Worst);
                v.WriteNumber("worstPhase", limit.WorstPhase);
                v.WriteOptional("best", limit.Best);
                v.WriteNumber("bestPhase", limit.BestPhase);
            });
        });
        json.WriteEndObject();
    }

    private static void WriteLimit(Utf8JsonWriter json, TunedLimit limit)
    {
        json.WriteString("axis", limit.Axis);
        json.WriteString("monitor", limit.Monitor);
        json.WriteString("function", limit.Function);
        json.WriteString("side", limit.Side);
        json.WriteOptional("level", limit.Level);
        json.WriteString("unit", limit.Unit);
        json.WriteString("written", limit.Written);
        json.WriteString("reaction", ResultJson.Spelling(limit.Reaction));
        json.WriteNumber("filter", limit.Filter);
        json.WriteNumber("limit", limit.Limit);
        json.WriteOptional("critical", limit.Critical);
        json.WriteOptional("filterAbove", limit.FilterAbove);
        json.WriteOptional("delayAbove", limit.DelayAbove);
        json.WriteBoolean("noDelayHelps", limit.NoDelayHelps);
        json.WriteList("frontier", limit.Frontier, (w, step) =>
        {
            w.WriteNumber("filter", step.Filter);
            w.WriteNumber("limit", step.Limit);
            w.WriteNumber("from", step.From);
            w.WriteNumber("until", step.Until);
            w.WriteString("trace", step.Trace);
        });
        json.WriteList("runs", limit.Runs, (w, run) =>
        {
            w.WriteString("trace", run.Trace);
            w.WriteOptional("critical", run.Critical);
        });
        WriteBounds(json, limit);
        WriteRoom(json, limit.Room);
    }

    private static void WriteBounds(Utf8JsonWriter json, TunedLimit limit)
    {
        var (bounds, trend) = (limit.Bounds, limit.Trend);
        json.WriteStartObject("bounds");
        json.WriteNumber("coverage", bounds.Coverage);
        json.WriteNumber("confidence", bounds.Confidence);
        json.WriteOptional("distributionFree", bounds.DistributionFree);
        json.WriteOptional("normal", bounds.Normal);
        json.WriteNumber("runsNeeded", bounds.RunsNeeded);
        json.WriteNumber("reached", bounds.Reached);
        json.WriteOptional("trend", trend?.Tau);
        json.WriteOptional("trendByChance", trend?.Chance);
        json.WriteEndObject();
    }

    // JSON knows no infinity: a stop that never ends takes no number.
    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    private static void WriteRoom(Utf8JsonWriter json, Room room)
    {
        json.WriteStartObject("room");
        json.WriteOptional("from", room.From);
        json.WriteString("basis", JsonNamingPolicy.CamelCase.ConvertName(room.Basis.ToString()));
        json.WriteNumber("margin", room.Margin);
        json.WriteOptional("to", room.To);
        json.WriteString("decidedBy", room.DecidedBy);
        if (room.Chain is { } chain)
        {
            json.WriteStartObject("present");
            json.WriteNumber("filter", chain.FilterInCycles);
            json.WriteNumber("cycle", chain.Cycle);
            json.WriteNumber("inputDelay", chain.InputDelay);
            json.WriteNumber("reactionDelay", chain.ReactionDelay);
            json.WriteOptional("stopping", Finite(chain.StoppingTime));
            json.WriteOptional("time", Finite(chain.TotalTime));
            json.WriteOptional("peakSpeed", Finite(chain.HighestSpeed));
            json.WriteOptional("overrun", Finite(chain.Travel));
            json.WriteOptional("separationDistance", Finite(room.SeparationDistance));
            json.WriteOptional("energy", Finite(room.Energy));
            json.WriteEndObject();
        }

        json.WriteList("levers", room.Levers, (w, lever) =>
        {
            w.WriteString("lever", lever.Name);
            w.WriteString("unit", lever.Unit);
            w.WriteNumber("present", lever.Present);
            w.WriteOptional("enough", lever.Enough);
            w.WriteNumber("extreme", lever.Extreme);
            w.WriteOptional("from", lever.From);
            w.WriteOptional("to", lever.To);
        });
        json.WriteEndObject();
    }
}
