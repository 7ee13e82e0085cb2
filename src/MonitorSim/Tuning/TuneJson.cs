using System.Text.Json;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>Writes tuning results as JSON.</summary>
public static class TuneJson
{
    /// <summary>Writes the result as UTF-8 JSON.</summary>
    public static void Write(TuneResult result, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, ResultJson.Layout);
        json.WriteStartObject();
        json.WriteNumber("tune", 1);
        json.WriteList("monitors", result.Monitors, WriteLimit);
        json.WriteEndObject();
    }

    private static void WriteLimit(Utf8JsonWriter json, TunedLimit limit)
    {
        json.WriteString("axis", limit.Axis);
        json.WriteString("monitor", limit.Monitor);
        json.WriteString("side", limit.Side);
        json.WriteOptional("level", limit.Level);
        json.WriteString("unit", limit.Unit);
        json.WriteNumber("filter", limit.Filter);
        json.WriteNumber("limit", limit.Limit);
        json.WriteOptional("critical", limit.Critical);
        json.WriteOptional("filterAbove", limit.FilterAbove);
        json.WriteOptional("delayAbove", limit.DelayAbove);
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
        json.WriteEndObject();
    }
}
