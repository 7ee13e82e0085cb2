using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>Writes results as JSON: camelCase, SI, times as exact decimals.</summary>
public static class ResultJson
{
    /// <summary>The layout of every JSON file that is written here: indented, with letters such as ² and · as they are.</summary>
    internal static readonly JsonWriterOptions Layout = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The result as JSON text.</summary>
    public static string Text(ReplayResult result)
    {
        using var stream = new MemoryStream();
        Write(result, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>Writes the result as UTF-8 JSON.</summary>
    public static void Write(ReplayResult result, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, Layout);
        json.WriteStartObject();
        json.WriteNumber("result", 1);
        json.WriteStartObject("plan");
        json.WriteString("title", result.Plan.Title);
        json.WriteString("sha256", result.Plan.Sha256);
        json.WriteEndObject();
        json.WriteStartObject("trace");
        json.WriteString("file", result.Trace);
        json.WriteString("sha256", result.TraceSha256);
        json.WriteNumber("samples", result.Samples);
        json.WriteNumber("duration", result.Duration);
        json.WriteEndObject();
        json.WriteString("verdict", result.IsTripped ? "tripped" : "clean");
        json.WriteList("trips", result.Trips, WriteTrip);
        json.WriteList("excursions", result.Excursions, WriteExcursion);
        json.WriteList("outputs", result.Outputs, (w, output) =>
        {
            w.WriteString("axis", output.Axis);
            w.WriteString("monitor", output.Monitor);
            w.WriteList("edges", output.Edges, (e, edge) =>
            {
                e.WriteNumber("time", edge.Time);
                e.WriteBoolean("on", edge.On);
            });
        });
        json.WriteList("states", result.States, (w, states) =>
        {
            w.WriteString("axis", states.Axis);
            w.WriteList("changes", states.Changes, (c, change) =>
            {
                c.WriteNumber("time", change.Time);
                c.WriteString("state", change.State.ToString());
                c.WriteString("cause", change.Cause);
            });
        });
        json.WriteList("headroom", result.Headroom, WriteHeadroom);
        json.WriteList("coverage", result.Coverage, (w, coverage) =>
        {
            w.WriteString("axis", coverage.Axis);
            w.WriteString("monitor", coverage.Monitor);
            w.WriteNumber("requests", coverage.Requests);
            w.WriteNumber("watched", coverage.Watched);
            w.WriteNumber("trips", coverage.Trips);
        });
        json.WriteList("expect", result.Expect, (w, expectation) =>
        {
            w.WriteNumber("index", expectation.Index);
            w.WriteBoolean("holds", expectation.Holds);
            w.WriteString("because", expectation.Because);
        });
        json.WriteList("events", result.Events, (w, item) =>
        {
            w.WriteNumber("time", item.Time);
            w.WriteString("axis", item.Axis);
            w.WriteString("source", item.Source);
            w.WriteString("event", item.Event);
        });
        json.WriteStartArray("warnings");
        foreach (var warning in result.Warnings) json.WriteStringValue(warning);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Writes an array of objects.</summary>
    internal static void WriteList<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    internal static void WriteOptional(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number)) json.WriteNumber(name, number);
        else json.WriteNull(name);
    }

    internal static void WriteOptional(this Utf8JsonWriter json, string name, decimal? value)
    {
        if (value is { } number) json.WriteNumber(name, number);
        else json.WriteNull(name);
    }

    internal static void WriteOptional(this Utf8JsonWriter json, string name, int? value)
    {
        if (value is { } number) json.WriteNumber(name, number);
        else json.WriteNull(name);
    }

    /// <summary>A reaction as plans and results spell it.</summary>
    internal static string Spelling(Reaction reaction) => reaction switch
    {
        Reaction.Stop0 => "stop 0",
        Reaction.Stop1 => "stop 1",
        Reaction.Stop2 => "stop 2",
        _ => "none",
    };

    private static void WriteTrip(Utf8JsonWriter json, Trip trip)
    {
        json.WriteString("axis", trip.Axis);
        json.WriteString("monitor", trip.Monitor);
        json.WriteString("function", trip.Function);
        json.WriteString("side", trip.Side);
        json.WriteOptional("level", trip.Level);
        json.WriteNumber("sample", trip.Sample);
        json.WriteNumber("time", trip.Time);
        json.WriteOptional("value", trip.Value);
        json.WriteOptional("limit", trip.Limit);
        json.WriteString("unit", trip.Unit);
        json.WriteOptional("peak", trip.Peak);
        json.WriteNumber("requestedAt", trip.RequestedAt);
        json.WriteOptional("watchingAt", trip.WatchingAt);
        json.WriteNumber("exceededAt", trip.ExceededAt);
        json.WriteString("reaction", Spelling(trip.Reaction));
        json.WriteStartObject("avoidedBy");
        json.WriteOptional("limit", trip.AvoidedBy.Limit);
        json.WriteOptional("filterAbove", trip.AvoidedBy.FilterAbove);
        json.WriteOptional("delayAbove", trip.AvoidedBy.DelayAbove);
        json.WriteBoolean("exact", trip.AvoidedBy.Exact);
        json.WriteEndObject();
    }

    private static void WriteExcursion(Utf8JsonWriter json, Excursion excursion)
    {
        json.WriteString("axis", excursion.Axis);
        json.WriteString("monitor", excursion.Monitor);
        json.WriteString("side", excursion.Side);
        json.WriteNumber("from", excursion.From);
        json.WriteNumber("until", excursion.Until);
        json.WriteNumber("duration", excursion.Duration);
        json.WriteNumber("peak", excursion.Peak);
        json.WriteNumber("peakAt", excursion.PeakAt);
        json.WriteBoolean("trips", excursion.Trips);
    }

    private static void WriteHeadroom(Utf8JsonWriter json, Headroom headroom)
    {
        json.WriteString("axis", headroom.Axis);
        json.WriteString("monitor", headroom.Monitor);
        json.WriteString("side", headroom.Side);
        json.WriteOptional("level", headroom.Level);
        json.WriteOptional("critical", headroom.Critical);
        json.WriteNumber("limit", headroom.Limit);
        json.WriteOptional("headroom", headroom.Room);
        json.WriteOptional("percent", headroom.Percent);
        json.WriteOptional("time", headroom.Time);
        json.WriteString("unit", headroom.Unit);
    }
}
