using System.Collections;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>Writes the records of a file (plan, scenario) as the JSON that reads back as the same.</summary>
internal static class RecordWriter
{
    private static readonly JsonWriterOptions Legible = new()
    {
        Indented = true,
        NewLine = "\n",
        // Units are to be read: "m/s²", not "m/s\u00B2". These are files, no web pages.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>JSON text. Scales and numbers that have no finite decimal (1/3, possible in C# only) are rounded to 17 digits.</summary>
    public static string Write(object root)
    {
        ArgumentNullException.ThrowIfNull(root);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Legible)) Record(json, root);
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Record(Utf8JsonWriter json, object record)
    {
        json.WriteStartObject();
        var type = PlanType.Of(record.GetType());
        var defaults = type.Create();
        var family = Variants.OfMember(record);

        // Names come first, then what it is.
        if (family is not null && type.Members is not [{ Name: "name" }, ..]) json.WriteString(family.Key, family.Word(record));
        foreach (var member in type.Members)
        {
            if (member.Get(record) is not { } value || (!member.IsAlwaysWritten && IsDefault(value, member.Get(defaults)))) continue;
            json.WritePropertyName(member.Name);
            Value(json, value, member.Shape);
            if (family is not null && member.Name == "name") json.WriteString(family.Key, family.Word(record));
        }

        json.WriteEndObject();
    }

    /// <summary>Null as a default means that anything set is news, an empty object too (an empty STO).</summary>
    private static bool IsDefault(object value, object? byDefault) => byDefault switch
    {
        null => false,
        ICollection { Count: 0 } => value is ICollection { Count: 0 },
        _ when PlanType.IsRecord(value.GetType()) => PlanType.Of(value.GetType()).Members.All(member => Equals(member.Get(value), member.Get(byDefault))),
        _ => value.Equals(byDefault),
    };

    private static void Value(Utf8JsonWriter json, object? value, Shape shape)
    {
        switch (value)
        {
            case null: json.WriteNullValue(); break;
            case string text: json.WriteStringValue(text); break;
            case bool flag: json.WriteBooleanValue(flag); break;
            case int whole: json.WriteNumberValue(whole); break;
            case double real: json.WriteRawValue(real.ToString("R", CultureInfo.InvariantCulture)); break;
            case Fraction factor: json.WriteRawValue(NumberText.Exact(factor)); break;
            case Enum choice: json.WriteStringValue(Choice.Name(choice)); break;
            case Quantity or Unit or Condition or GearRatio: json.WriteStringValue(value.ToString()); break;
            default:
                if (shape.Kind == ShapeKind.List) List(json, (IEnumerable)value, shape.Item!);
                else if (shape.Kind == ShapeKind.Map) Map(json, value, shape.Item!);
                else Record(json, value);
                break;
        }
    }

    private static void List(Utf8JsonWriter json, IEnumerable list, Shape item)
    {
        json.WriteStartArray();
        foreach (var value in list) Value(json, value, item);
        json.WriteEndArray();
    }

    private static void Map(Utf8JsonWriter json, object map, Shape item)
    {
        json.WriteStartObject();
        foreach (var (name, value) in PlanType.Entries(map))
        {
            json.WritePropertyName(name);
            Value(json, value, item);
        }

        json.WriteEndObject();
    }
}
