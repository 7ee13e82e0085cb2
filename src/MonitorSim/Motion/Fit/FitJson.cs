using System.Text;
using System.Text.Json;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim.Motion.Fit;

/// <summary>Writes fits as JSON: camelCase, SI; the plant as a plan has it.</summary>
public static class FitJson
{
    /// <summary>Writes the result as UTF-8 JSON.</summary>
    public static void Write(FitResult result, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var json = new Utf8JsonWriter(stream, ResultJson.Layout);
        json.WriteStartObject();
        json.WriteNumber("fit", 1);
        json.WriteString("axis", result.Axis);
        json.WriteString("trace", result.Trace);
        json.WriteString("method", Choice.Name(result.Method));
        json.WriteNumber("from", result.From);
        json.WriteNumber("until", result.Until);
        json.WriteNumber("samples", result.Samples);
        json.WriteNumber("equations", result.Equations);
        json.WriteNumber("window", result.Window);
        json.WriteList("parameters", result.Parameters, (w, parameter) =>
        {
            w.WriteString("name", parameter.Name);
            w.WriteOptional("value", parameter.Value);
            w.WriteOptional("standardError", parameter.StandardError);
            w.WriteOptional("lower", parameter.Lower);
            w.WriteOptional("upper", parameter.Upper);
            w.WriteString("unit", parameter.Unit);
        });
        json.WriteStartObject("residuals");
        json.WriteOptional("rms", result.Residuals.Rms);
        json.WriteOptional("max", result.Residuals.Max);
        json.WriteOptional("signalRms", result.Residuals.SignalRms);
        json.WriteOptional("neighbours", result.Residuals.Neighbours);
        json.WriteString("unit", result.Residuals.Unit);
        json.WriteEndObject();
        json.WriteOptional("condition", result.Condition);
        json.WriteStartArray("warnings");
        foreach (var warning in result.Warnings) json.WriteStringValue(warning);
        json.WriteEndArray();
        json.WritePropertyName("plant");
        if (result.Plant is null) json.WriteNullValue();
        else json.WriteRawValue(RecordWriter.Write(result.Plant));
        json.WriteEndObject();
    }

    /// <summary>The plant as it goes into a plan, JSON text; null where the recording does not tell its inertia.</summary>
    public static string? PlantText(FitResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Plant is null ? null : $"\"plant\": {RecordWriter.Write(result.Plant).TrimEnd()}";
    }
}
