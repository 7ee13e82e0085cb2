using System.Globalization;
using System.Text.Json;

namespace MonitorSim.Tests.Replays;

/// <summary>Holds a result in JSON against an expected one, by the rules that stand in the head of the worked cases' own comparison:
/// lists are sets under a key, timelines are compared as what they mean, times to the nanosecond, values to 1e-9 relative.</summary>
internal static class ExpectedResult
{
    private static readonly HashSet<string> Times =
        ["time", "requestedAt", "watchingAt", "exceededAt", "from", "until", "duration", "peakAt", "filterAbove", "delayAbove", "filter", "watched"];

    private static readonly HashSet<string> Counts = ["sample", "samples", "requests", "trips", "level", "index"];

    private static readonly HashSet<string> NotCompared =
        ["events", "warnings", "sha256", "file", "title", "result", "tune", "bounds", "room", "cause"];

    private static readonly Dictionary<string, string[]> Keys = new()
    {
        ["trips"] = ["axis", "monitor", "side", "time"],
        ["excursions"] = ["axis", "monitor", "side", "from"],
        ["headroom"] = ["axis", "monitor", "side", "level"],
        ["coverage"] = ["axis", "monitor"],
        ["outputs"] = ["axis", "monitor"],
        ["states"] = ["axis"],
        ["expect"] = ["index"],
    };

    /// <summary>One line for every difference; none where the result is as expected.</summary>
    public static List<string> Differences(string expected, string found)
    {
        using var ours = JsonDocument.Parse(expected);
        using var theirs = JsonDocument.Parse(found);
        var lines = new List<string>();
        Compare(ours.RootElement, theirs.RootElement, "", lines);
        return lines;
    }

    private static void Compare(JsonElement expected, JsonElement found, string path, List<string> lines)
    {
        foreach (var field in expected.EnumerateObject())
        {
            if (NotCompared.Contains(field.Name)) continue;
            var (a, b, where) = (field.Value, Field(found, field.Name), path + field.Name);
            if (field.Name is "edges" or "changes")
            {
                var (ours, theirs) = (Timeline(field.Name, a), Timeline(field.Name, b));
                if (!ours.SequenceEqual(theirs)) lines.Add($"{where}: expected [{string.Join("; ", ours)}], found [{string.Join("; ", theirs)}]");
            }
            else if (a.ValueKind == JsonValueKind.Array && Keys.TryGetValue(field.Name, out var key)) CompareSets(a, b, field.Name, key, path, lines);
            else if (a.ValueKind == JsonValueKind.Object) Compare(a, b, where + ".", lines);
            else if (!IsSame(field.Name, a, b)) lines.Add($"{where}: expected {a}, found {b}");
        }
    }

    private static void CompareSets(JsonElement expected, JsonElement found, string field, string[] key, string path, List<string> lines)
    {
        var ours = Items(expected).ToDictionary(item => KeyOf(item, key));
        var theirs = Items(found).GroupBy(item => KeyOf(item, key)).ToDictionary(group => group.Key, group => group.ToList());
        lines.AddRange(theirs.Where(pair => pair.Value.Count > 1).Select(pair => $"{path}{field}[{pair.Key}]: repeats"));
        foreach (var (name, item) in ours)
        {
            if (theirs.TryGetValue(name, out var others)) Compare(item, others[0], $"{path}{field}[{name}].", lines);
            else if (!IsEmptyTimeline(field, item)) lines.Add($"{path}{field}[{name}]: missing");
        }

        lines.AddRange(theirs.Keys.Where(name => !ours.ContainsKey(name)).Select(name => $"{path}{field}[{name}]: not expected"));
    }

    private static bool IsEmptyTimeline(string field, JsonElement item) => field switch
    {
        "states" => Timeline("changes", Field(item, "changes")).Count == 0,
        "outputs" => Timeline("edges", Field(item, "edges")).Count == 0,
        _ => false,
    };

    // Entries of one time count as the last of them; what repeats the value before says nothing.
    private static List<(long Time, string Value)> Timeline(string field, JsonElement entries)
    {
        var (value, last) = field == "edges" ? ("on", "False") : ("state", "Running");
        var clean = new List<(long, string)>();
        foreach (var group in Items(entries).Select(e => (Time: Nanoseconds(Field(e, "time")), Value: Field(e, value).ToString())).GroupBy(e => e.Time))
        {
            var (time, now) = group.Last();
            if (now != last) clean.Add((time, now));
            last = now;
        }

        return clean;
    }

    private static bool IsSame(string field, JsonElement a, JsonElement b)
    {
        if (IsNothing(a) || IsNothing(b)) return IsNothing(a) && IsNothing(b);
        if (a.ValueKind != JsonValueKind.Number || b.ValueKind != JsonValueKind.Number) return a.ValueKind == b.ValueKind && a.ToString() == b.ToString();
        var (x, y) = (a.GetDouble(), b.GetDouble());
        return Counts.Contains(field) ? x == y
            : Times.Contains(field) ? Math.Abs(x - y) < 1e-9
            : Math.Abs(x - y) <= 1e-9 * Math.Max(Math.Abs(x), Math.Abs(y)) + 1e-15;
    }

    private static string KeyOf(JsonElement item, string[] key) => string.Join('/', key.Select(field => Field(item, field))
        .Zip(key, (value, field) => IsNothing(value) ? "-" : Times.Contains(field) ? Nanoseconds(value).ToString(CultureInfo.InvariantCulture) : value.ToString()));

    private static long Nanoseconds(JsonElement seconds) => (long)Math.Round(seconds.GetDouble() * 1e9);

    private static bool IsNothing(JsonElement value) => value.ValueKind is JsonValueKind.Undefined or JsonValueKind.Null;

    private static JsonElement Field(JsonElement item, string name) =>
        item.ValueKind == JsonValueKind.Object && item.TryGetProperty(name, out var value) ? value : default;

    private static IEnumerable<JsonElement> Items(JsonElement list) => list.ValueKind == JsonValueKind.Array ? list.EnumerateArray() : [];
}
