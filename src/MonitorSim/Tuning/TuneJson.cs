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
        json.WriteStartObject("bounds");
        json.WriteNumber("coverage", limit.Bounds.Coverage);
        json.WriteNumber("confidence", limit.Bounds.Confidence);
        json.WriteOptional("distributionFree", limit.Bounds.DistributionFree);
        json.WriteOptional("normal", limit.Bounds.Normal);
        json.WriteNumber("runsNeeded", limit.Bounds.RunsNeeded);
        json.WriteNumber("reached", limit.Bounds.Reached);
        json.WriteEndObject();
    }
}
