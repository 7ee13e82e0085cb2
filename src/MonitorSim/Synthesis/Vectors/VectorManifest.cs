using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The manifest of a set of vectors: which branch each meets and from which side, what must come of it, and what no vector meets.</summary>
public static class VectorManifest
{
    private static readonly JsonWriterOptions Legible = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes the manifest as JSON; times in s, exact to the nanosecond.</summary>
    /// <param name="plan">The plan that the vectors are made of.</param>
    /// <param name="set">The vectors.</param>
    /// <param name="stream">Where to.</param>
    public static void WriteJson(Plan plan, VectorSet set, Stream stream)
    {
        using var json = new Utf8JsonWriter(stream, Legible);
        json.WriteStartObject();
        json.WriteNumber("vectors", 1);
        json.WriteStartObject("plan");
        json.WriteString("title", plan.Title);
        json.WriteString("sha256", plan.Sha256);
        json.WriteEndObject();
        json.WriteNumber("period", set.Period.Nanoseconds / 1_000_000_000m);
        json.WriteStartObject("branches");
        json.WriteNumber("met", set.Met);
        json.WriteNumber("total", set.Total);
        json.WriteEndObject();
        json.WriteStartArray("made");
        foreach (var vector in set.Vectors) Vector(json, vector);
        json.WriteEndArray();
        json.WriteStartArray("missed");
        foreach (var miss in set.Missed) Of(json, miss.Branch, miss.Why);
        json.WriteEndArray();
        Texts(json, "failed", set.Failed);
        Texts(json, "notes", set.Notes);
        json.WriteEndObject();
    }

    /// <summary>The same for people, in Markdown.</summary>
    /// <param name="plan">The plan that the vectors are made of.</param>
    /// <param name="set">The vectors.</param>
    public static string Markdown(Plan plan, VectorSet set)
    {
        var text = new StringBuilder();
        text.Append(FormattableString.Invariant($"# Boundary vectors{(plan.Title.Length == 0 ? "" : ": " + Cell(plan.Title))}\n\n{set.Met} of {set.Total} branches are met by {set.Vectors.Count} vectors; one sample and one cycle each {set.Period}.\n"));
        text.Append("Each folder holds a plan and a recording: `monitorsim check FOLDER/plan.json FOLDER/trace.csv`. Sides, levels, outputs and the order of states are in manifest.json only.\n");
        foreach (var note in set.Notes) text.Append("* ").Append(Cell(note)).Append('\n');
        text.Append("\n| vector | what happens | meets | trips |\n|---|---|---|---|\n");
        foreach (var vector in set.Vectors)
        {
            text.Append("| ").Append(vector.Name).Append(" | ").Append(Cell(vector.Says)).Append(" | ").AppendJoin("<br>", vector.Meets.Select(branch => Cell(branch.ToString()))).Append(" | ")
                .AppendJoin("<br>", vector.Expected.Trips.Select(trip => Cell(FormattableString.Invariant($"{trip.Axis}.{trip.Monitor} {trip.Side} {trip.Time:0.#########} s")))).Append(" |\n");
        }

        if (set.Missed.Count > 0) text.Append("\n## Not met\n\n| branch | why |\n|---|---|\n");
        foreach (var miss in set.Missed) text.Append("| ").Append(Cell(miss.Branch.ToString())).Append(" | ").Append(Cell(miss.Why)).Append(" |\n");
        if (set.Failed.Count > 0) text.Append("\n## Errors of the generator\n\n");
        foreach (var failed in set.Failed) text.Append("* ").Append(Cell(failed)).Append('\n');
        return text.ToString();
    }

    private static void Vector(Utf8JsonWriter json, BoundaryVector vector)
    {
        json.WriteStartObject();
        json.WriteString("name", vector.Name);
        json.WriteString("says", vector.Says);
        json.WriteString("plan", $"{vector.Name}/plan.json");
        json.WriteString("trace", $"{vector.Name}/trace.csv");
        json.WriteStartArray("meets");
        foreach (var branch in vector.Meets) Of(json, branch, null);
        json.WriteEndArray();
        json.WriteStartArray("trips");
        foreach (var trip in vector.Expected.Trips)
        {
            json.WriteStartObject();
            json.WriteString("axis", trip.Axis);
            json.WriteString("monitor", trip.Monitor);
            json.WriteString("side", trip.Side);
            if (trip.Level is { } level) json.WriteNumber("level", level);
            else json.WriteNull("level");
            json.WriteNumber("sample", trip.Sample);
            json.WriteNumber("time", trip.Time);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("states");
        foreach (var axis in vector.Expected.States)
            foreach (var change in axis.Changes) Change(json, ("axis", axis.Axis), ("state", change.State.ToString()), ("cause", change.Cause), change.Time);
        json.WriteEndArray();
        json.WriteStartArray("outputs");
        foreach (var output in vector.Expected.Outputs)
            foreach (var edge in output.Edges) Change(json, ("axis", output.Axis), ("monitor", output.Monitor), ("becomes", edge.On ? "on" : "off"), edge.Time);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Change(Utf8JsonWriter json, (string Name, string Value) first, (string Name, string Value) second, (string Name, string Value) third, decimal time)
    {
        json.WriteStartObject();
        foreach (var (name, value) in new[] { first, second, third }) json.WriteString(name, value);
        json.WriteNumber("time", time);
        json.WriteEndObject();
    }

    private static void Of(Utf8JsonWriter json, Branch branch, string? why)
    {
        json.WriteStartObject();
        json.WriteString("axis", branch.Axis);
        json.WriteString("monitor", branch.Monitor);
        json.WriteString("side", branch.Side);
        if (branch.Level is { } level) json.WriteNumber("level", level);
        else json.WriteNull("level");
        json.WriteString("rule", branch.Rule);
        json.WriteString("from", branch.From);
        if (why is not null) json.WriteString("why", why);
        json.WriteEndObject();
    }

    private static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts) json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");
}
