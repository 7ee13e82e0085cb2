using System.Text;
using System.Text.Json;
using MonitorSim.Replays;

namespace MonitorSim.Reports.Scenes;

/// <summary>A scene for the page's script, as JSON that cannot end its script element: the writer escapes &lt;, &gt; and &amp;. Times are whole nanoseconds;
/// what seldom changes is written as pairs of cycle and new value.</summary>
internal static class SceneData
{
    public static string Json(Scene scene, SceneDrawing drawing, SceneTexts texts)
    {
        var (history, cycles) = (scene.History, scene.History.Cycles);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteString("axis", history.Window.Axis);
            json.WriteNumber("delay", Nanoseconds(history.Delay));
            json.WriteNumber("filter", Nanoseconds(history.Filter));
            json.WriteNumber("first", cycles[0].Index);
            json.WriteNumber("start", scene.At);
            json.WriteBoolean("trips", scene.IsTrip);
            json.WriteString("beyond", texts.Beyond);
            Every(json, "time", cycles, cycle => json.WriteNumberValue(Nanoseconds(cycle.Time)));
            Every(json, "x", cycles, cycle => json.WriteNumberValue(Math.Round(drawing.At(cycle).X, 1)));
            Every(json, "y", cycles, cycle => json.WriteNumberValue(Math.Round(drawing.At(cycle).Y, 1)));
            Every(json, "value", cycles, cycle => Text(json, cycle.Value is null ? null : texts.Value(cycle)));
            Changes(json, "limit", cycles, cycle => cycle.Limit is null ? null : texts.Limit(cycle), Text);
            Changes(json, "state", cycles, cycle => cycle.State.ToString(), Text);
            Changes(json, "axisState", cycles, cycle => cycle.Axis.ToString(), Text);
            Changes(json, "requestedAt", cycles, cycle => cycle.RequestedAt, Time);
            Changes(json, "watchingAt", cycles, cycle => cycle.WatchingAt, Time);
            Changes(json, "exceededAt", cycles, cycle => cycle.ExceededAt, Time);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Every(Utf8JsonWriter json, string name, IReadOnlyList<ChainCycle> cycles, Action<ChainCycle> write)
    {
        json.WriteStartArray(name);
        foreach (var cycle in cycles) write(cycle);
        json.WriteEndArray();
    }

    private static void Changes<T>(Utf8JsonWriter json, string name, IReadOnlyList<ChainCycle> cycles, Func<ChainCycle, T> value, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        for (var k = 0; k < cycles.Count; k++)
        {
            if (k > 0 && Equals(value(cycles[k]), value(cycles[k - 1]))) continue;
            json.WriteStartArray();
            json.WriteNumberValue(k);
            write(json, value(cycles[k]));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Text(Utf8JsonWriter json, string? text)
    {
        if (text is null) json.WriteNullValue();
        else json.WriteStringValue(text);
    }

    private static void Time(Utf8JsonWriter json, decimal? seconds)
    {
        if (seconds is { } time) json.WriteNumberValue(Nanoseconds(time));
        else json.WriteNullValue();
    }

    private static long Nanoseconds(decimal seconds) => (long)(seconds * 1_000_000_000m);
}
