using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>A recording as texts under their columns, with times in ns from the first sample.</summary>
internal sealed class ModelTrace
{
    private readonly Dictionary<string, string[]> _columns = [];
    private readonly bool _isComma;

    public ModelTrace(JsonElement plan, string csv)
    {
        var format = plan.Field("trace")!.Value;
        var delimiter = format.Text("delimiter")!;
        _isComma = format.Text("decimal") == ",";
        var lines = csv.Split('\n').Select(line => line.TrimEnd('\r')).Skip(format.Field("skipRows")?.GetInt32() ?? 0).Where(line => line.Length > 0).ToList();
        var names = lines[0].Split(delimiter);
        var rows = lines.Skip(format.Flag("unitsRow") ? 2 : 1).Select(line => line.Split(delimiter)).ToList();
        for (var i = 0; i < names.Length; i++) _columns[names[i]] = [.. rows.Select(row => row[i])];
        Times = [.. Enumerable.Range(0, rows.Count).Select(k => TimeOf(format, k))];
        HasMissing = plan.Text("missing");
        Gap = plan.Text("gap") is null ? null : plan.Time("gap");
    }

    public long[] Times { get; }

    public int Count => Times.Length;

    /// <summary>The plan's word on missing cells.</summary>
    public string? HasMissing { get; }

    private long? Gap { get; }

    /// <summary>Whether a sample is the first after a gap.</summary>
    public bool IsAfterGap(int k) => k > 0 && (Fraction)(Times[k] - Times[k - 1]) > (Gap is { } gap ? gap : MedianStep() * 5);

    public string[] Texts(string column) => _columns[column];

    /// <summary>The numbers of a column; null where one is missing and not held.</summary>
    public Fraction?[] Numbers(string column)
    {
        var numbers = new Fraction?[Count];
        for (var k = 0; k < Count; k++)
        {
            var cell = Texts(column)[k];
            numbers[k] = cell.Length == 0 || cell.Equals("nan", StringComparison.OrdinalIgnoreCase)
                ? HasMissing == "hold" ? numbers[k - 1] : null
                : Fraction.Parse(_isComma ? cell.Replace(',', '.') : cell);
        }

        return numbers;
    }

    private Fraction MedianStep()
    {
        var steps = Times.Zip(Times.Skip(1), (a, b) => b - a).Order().ToList();
        return ((Fraction)steps[(steps.Count - 1) / 2] + steps[steps.Count / 2]) / 2;
    }

    private long TimeOf(JsonElement format, int k)
    {
        if (format.Text("rate") is { } rate) return ModelUnits.Round((Fraction)(k * 1_000_000_000L) / ModelUnits.Parse(rate));
        var time = format.Field("time")!.Value;
        var cells = Texts(time.Text("column")!);
        Fraction At(int i) => Fraction.Parse(_isComma ? cells[i].Replace(',', '.') : cells[i]);
        return ModelUnits.Round((At(k) - At(0)) * ModelUnits.Factor(time.Text("unit")!));
    }
}
