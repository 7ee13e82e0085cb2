using System.Globalization;
using MonitorSim.Plans;

namespace MonitorSim.Tuning;

/// <summary>The fields of a JSON object that a program wrote, with the place of each that is missing or of another kind.</summary>
/// <param name="tree">The object.</param>
/// <param name="file">What messages call the file.</param>
/// <param name="problems">Where what is wrong goes.</param>
internal sealed class JsonFields(JsonTree.Object tree, string file, List<Problem> problems)
{
    private const string Again = "write the file again with tune --json";

    public string Text(string name) => Find<JsonTree.Text>(name, "a text")?.Value ?? "";

    public string? OptionalText(string name) => IsNull(name) ? null : Text(name);

    public bool Flag(string name) => Find<JsonTree.Flag>(name, "true or false")?.Value ?? false;

    /// <summary>A whole number, 0 or more.</summary>
    public int Count(string name) =>
        Number<int>(name, "a whole number, 0 or more", text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null);

    public int? OptionalCount(string name) => IsNull(name) ? null : Count(name);

    /// <summary>A time, 0 or more.</summary>
    public decimal Seconds(string name) =>
        Number<decimal>(name, "a time in s, 0 or more", text => decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var s) && s >= 0 ? s : null);

    public decimal? OptionalSeconds(string name) => IsNull(name) ? null : Seconds(name);

    public double Number(string name) =>
        Number<double>(name, "a number", text => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && double.IsFinite(x) ? x : null);

    public double? OptionalNumber(string name) => IsNull(name) ? null : Number(name);

    /// <summary>The fields of an object within this one; null where there is none.</summary>
    public JsonFields? Fields(string name) => Find<JsonTree.Object>(name, "an object") is { } fields ? new(fields, file, problems) : null;

    /// <summary>The items of a list of objects.</summary>
    public IReadOnlyList<T> List<T>(string name, Func<JsonFields, T> read)
    {
        var items = new List<T>();
        foreach (var item in Find<JsonTree.Array>(name, "a list")?.Items ?? [])
        {
            if (item is JsonTree.Object fields) items.Add(read(new(fields, file, problems)));
            else Report(item, $"'{name}' holds {item.Noun}", $"it is a list of objects; {Again}");
        }

        return items;
    }

    /// <summary>Reports something wrong with a field, at its place.</summary>
    public void Report(string name, string what, string fix = Again) => Report(tree.Find(name) ?? tree, what, fix);

    private bool IsNull(string name) => tree.Find(name) is JsonTree.Null;

    private T Number<T>(string name, string wanted, Func<string, T?> read)
        where T : struct
    {
        if (Find<JsonTree.Number>(name, wanted) is not { } number) return default;
        if (read(number.Value) is { } value) return value;
        Report(number, $"'{name}' is {number.Noun}", $"it is {wanted}; {Again}");
        return default;
    }

    private T? Find<T>(string name, string wanted)
        where T : JsonTree
    {
        var found = tree.Find(name);
        if (found is T right) return right;
        Report(found ?? tree, found is null ? $"'{name}' is missing" : $"'{name}' is {found.Noun}", $"it is {wanted}; {Again}");
        return null;
    }

    private void Report(JsonTree at, string what, string fix) => problems.Add(new(FormattableString.Invariant($"{file}({at.Line},{at.Column})"), what, fix));
}
