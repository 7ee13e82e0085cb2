using System.Text.Json;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Replays;

namespace MonitorSim.Motion;

/// <summary>Writes stops and envelopes as JSON: camelCase, SI, times in seconds; null where an axis does not come to rest.</summary>
public static class StopJson
{
    /// <summary>Writes them as UTF-8 JSON.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="faults">The words of the faults.</param>
    /// <param name="stops">Stops from stated speeds.</param>
    /// <param name="envelopes">Faults at every sample of a recording.</param>
    /// <param name="stream">Where it goes.</param>
    public static void Write(Plan plan, IReadOnlyList<string> faults, IReadOnlyList<LimitStop> stops, IReadOnlyList<EnvelopeResult> envelopes, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, ResultJson.Layout);
        json.WriteStartObject();
        json.WriteNumber("stop", 1);
        json.WriteStartObject("plan");
        json.WriteString("title", plan.Title);
        json.WriteString("sha256", plan.Sha256);
        json.WriteEndObject();
        json.WriteStartArray("faults");
        foreach (var fault in faults) json.WriteStringValue(fault);
        json.WriteEndArray();
        json.WriteList("stops", stops, WriteStop);
        json.WriteList("envelopes", envelopes, (w, envelope) =>
        {
            w.WriteString("axis", envelope.Axis);
            w.WriteString("trace", envelope.Trace);
            w.WriteNumber("harmless", envelope.Harmless);
            w.WriteNumber("undetected", envelope.Undetected);
            w.WriteNumber("notStopped", envelope.NotStopped);
            w.WriteList("worst", envelope.Worst, WriteWorst);
            w.WriteList("points", envelope.Points, WritePoint);
        });
        json.WriteEndObject();
    }

    private static void WriteStop(Utf8JsonWriter json, LimitStop stop)
    {
        var result = stop.Result;
        json.WriteString("axis", stop.Axis);
        json.WriteString("from", stop.From);
        json.WriteString("reaction", ResultJson.Spelling(stop.Reaction));
        json.WriteNumber("velocity", stop.Speed.Si);
        json.WriteOptional("time", result.Time);
        json.WriteNumber("distance", result.Distance);
        json.WriteNumber("peakSpeed", result.PeakSpeed);
        json.WriteNumber("energy", result.Energy);
        json.WriteOptional("fall", result.Fall);
        json.WriteOptional("drop", result.Drop);
        json.WriteOptional("detectedAt", result.DetectedAt);
        json.WriteOptional("actedAt", result.ActedAt);
        json.WriteOptional("torqueOffAt", result.OffAt);
        json.WriteOptional("brakedAt", result.BrakedAt);
    }

    private static void WriteWorst(Utf8JsonWriter json, WorstFigure worst)
    {
        json.WriteString("figure", worst.Figure);
        json.WriteString("monitor", worst.Limit?.Monitor);
        json.WriteString("side", worst.Limit?.Side);
        json.WriteNumber("value", worst.Value);
        json.WriteString("unit", worst.Unit);
        json.WriteNumber("sample", worst.Point.Sample);
        json.WriteNumber("at", worst.Point.At);
    }

    private static void WritePoint(Utf8JsonWriter json, EnvelopePoint point)
    {
        json.WriteNumber("sample", point.Sample);
        json.WriteNumber("at", point.At);
        json.WriteNumber("direction", point.Direction);
        json.WriteNumber("velocity", point.Velocity);
        json.WriteOptional("time", point.Time);
        json.WriteNumber("distance", point.Distance);
        json.WriteNumber("peakSpeed", point.PeakSpeed);
        json.WriteNumber("energy", point.Energy);
        json.WriteOptional("fall", point.Fall);
        json.WriteOptional("drop", point.Drop);
        json.WriteString("monitor", point.Monitor);
        json.WriteString("side", point.Side);
        json.WriteOptional("detectedAt", point.DetectedAt);
        json.WriteOptional("actedAt", point.ActedAt);
        json.WriteOptional("torqueOffAt", point.OffAt);
        json.WriteOptional("brakedAt", point.BrakedAt);
        json.WriteList("overruns", point.Overruns, (w, overrun) =>
        {
            w.WriteString("monitor", overrun.Monitor);
            w.WriteString("side", overrun.Side);
            w.WriteNumber("amount", overrun.Amount);
            w.WriteString("unit", overrun.Unit);
        });
    }
}
