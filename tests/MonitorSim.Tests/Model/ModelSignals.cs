using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>The boolean inputs at every sample.</summary>
internal static class ModelSignals
{
    public static Dictionary<string, bool[]> Read(JsonElement plan, ModelTrace trace) => plan.Field("signals") is { } signals
        ? signals.EnumerateObject().ToDictionary(signal => signal.Name, signal => Values(signal.Value, trace))
        : [];

    private static bool[] Values(JsonElement signal, ModelTrace trace)
    {
        if (signal.Field("windows") is { } windows)
        {
            var ends = windows.EnumerateArray().Select(w => (From: Time(w[0]), Until: Time(w[1]))).ToList();
            return [.. trace.Times.Select(t => ends.Any(w => w.From <= t && t < w.Until))];
        }

        var cells = trace.Texts(signal.Text("column")!);
        var values = new bool[cells.Length];
        for (var k = 0; k < cells.Length; k++) values[k] = cells[k].Length == 0 ? k > 0 && values[k - 1] : IsOn(signal, cells[k]);
        return values;
    }

    private static long Time(JsonElement text) => ModelUnits.Round(ModelUnits.Parse(text.GetString()!));

    private static bool IsOn(JsonElement signal, string cell) => signal.Field("equals") is { } wanted
        ? wanted.ValueKind == JsonValueKind.Number ? Fraction.Parse(cell).CompareTo(wanted.GetInt32()) == 0 : cell.Equals(wanted.GetString(), StringComparison.OrdinalIgnoreCase)
        : cell.ToLowerInvariant() is "1" or "true" or "on";
}
