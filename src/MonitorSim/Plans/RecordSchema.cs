using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>The JSON Schema (draft 2020-12) of a kind of file, made of its records. Descriptions come from the library's documentation file.</summary>
internal static class RecordSchema
{
    // Numbers as Quantity.Parse reads them, then any unit.
    private const string Unsigned = "(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+\\-]?[0-9]{1,4})?\\s*(?:1/)?[^\\s0-9.,].*$";
    private const string AnySign = "^\\s*[+\\-\u2212]?" + Unsigned;
    private const string NotBelowZero = "^\\s*\\+?" + Unsigned;

    private static readonly JsonSerializerOptions Legible =
        new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema of a record as JSON text.</summary>
    /// <param name="type">The record of the whole file.</param>
    /// <param name="noun">What the file is; also the key of its version, which is 1.</param>
    public static string Json(Type type, string noun)
    {
        var definitions = new SortedDictionary<string, JsonObject>(StringComparer.Ordinal);
        var root = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "MonitorSim " + noun,
        };
        foreach (var (name, value) in Record(PlanType.Of(type), definitions)) root[name] = value?.DeepClone();
        var properties = root["properties"]!.AsObject();
        properties.Insert(0, "$schema", new JsonObject { ["type"] = "string", ["description"] = "Where this schema is, for editors." });
        properties[noun]!["enum"] = new JsonArray(1);
        root["$defs"] = new JsonObject(definitions.Select(definition => KeyValuePair.Create(definition.Key, (JsonNode?)definition.Value)));
        return root.ToJsonString(Legible) + "\n";
    }

    private static JsonObject Record(PlanType type, SortedDictionary<string, JsonObject> definitions)
    {
        var schema = new JsonObject();
        Describe(schema, DocComments.Of(type.Type));
        schema["type"] = "object";
        var properties = new JsonObject();
        var defaults = type.Create();
        foreach (var member in type.Members)
        {
            var value = Value(member.Shape, member, definitions);
            if (!member.IsRequired && member.Get(defaults) is Enum word) value["default"] = Choice.Name(word);
            if (member.Get(defaults) is bool flag) value["default"] = flag;
            Describe(value, DocComments.Of(member.Property));
            properties[member.Name] = value;
        }

        schema["properties"] = properties;
        if (type.Members.Where(member => member.IsRequired).Select(member => member.Name).ToList() is { Count: > 0 } required) schema["required"] = Strings(required);
        if (type.ExactlyOneOf.Count > 0) schema["oneOf"] = Alternatives(type.ExactlyOneOf);
        if (type.AtLeastOneOf.Count > 0) schema["anyOf"] = Alternatives(type.AtLeastOneOf);
        schema["additionalProperties"] = false;
        return schema;
    }

    private static JsonObject Value(Shape shape, PlanMember member, SortedDictionary<string, JsonObject> definitions) => shape.Kind switch
    {
        ShapeKind.Text when member.IsAnyScalar => new() { ["type"] = Strings(["string", "number", "boolean"]) },
        ShapeKind.Text => new() { ["type"] = "string" },
        ShapeKind.Flag => new() { ["type"] = "boolean" },
        ShapeKind.Whole => new() { ["type"] = "integer" },
        ShapeKind.Real or ShapeKind.Factor => new() { ["type"] = "number" },
        ShapeKind.Quantity => Quantity(member),
        ShapeKind.Unit => new() { ["type"] = "string", ["minLength"] = 1, ["examples"] = Strings(["mm", "deg", "rpm", "N·m", "°C"]) },
        ShapeKind.Condition => new() { ["type"] = "string", ["minLength"] = 1, ["examples"] = Strings(["gateOpen and not (handheld or bridge.\"set-up speed\")", "bridge.state == TorqueOff"]) },
        ShapeKind.Gear => new() { ["type"] = "string", ["pattern"] = "^\\s*[0-9]+(\\.[0-9]+)?\\s*:\\s*[0-9]+(\\.[0-9]+)?\\s*$", ["examples"] = Strings(["5:1"]) },
        ShapeKind.Choice => Words(shape.Type),
        ShapeKind.Variant => Reference(Variants.Of(shape.Type)!.Noun, definitions, () => Family(Variants.Of(shape.Type)!, definitions)),
        ShapeKind.List when shape.Item!.Kind == ShapeKind.Quantity => new() { ["type"] = "array", ["items"] = Quantity(member), ["minItems"] = 2, ["maxItems"] = 2 },
        ShapeKind.List => new() { ["type"] = "array", ["items"] = Value(shape.Item!, member, definitions) },
        ShapeKind.Map => new() { ["type"] = "object", ["additionalProperties"] = Value(shape.Item!, member, definitions) },
        _ => Reference(Definition(shape.Type), definitions, () => Record(PlanType.Of(shape.Type), definitions)),
    };

    private static JsonObject Quantity(PlanMember member)
    {
        var signed = member.Kind?.Allowed is Allowed.Any or Allowed.NonNegativeUnlessSigned;
        var schema = new JsonObject { ["type"] = "string", ["pattern"] = signed ? AnySign : NotBelowZero };
        if (member.Kind?.Kind is { } kind && kind is not (Kind.Channel or Kind.ChannelDifference))
        {
            var units = KindUnits.Of(kind, rotary: false).Examples.Concat(KindUnits.Of(kind, rotary: true).Examples).Distinct();
            schema["examples"] = Strings(units.Select(unit => "1 " + unit));
        }

        if (member.NullWord is not { } word) return schema;
        return new() { ["anyOf"] = new JsonArray(new JsonObject { ["const"] = word }, schema), ["default"] = word };
    }

    private static JsonObject Words(Type type)
    {
        var words = Enum.GetValues(type).Cast<Enum>().Select(value =>
        {
            var word = new JsonObject { ["const"] = Choice.Name(value) };
            Describe(word, DocComments.Of(type.GetField(value.ToString())!));
            return word;
        });
        return new() { ["oneOf"] = new JsonArray([.. words]) };
    }

    /// <summary>One shape a word: editors then complain about the function that was meant, not about all of them.</summary>
    private static JsonObject Family(Variants family, SortedDictionary<string, JsonObject> definitions)
    {
        var branches = family.Words.Select(word => (JsonNode)new JsonObject
        {
            ["if"] = new JsonObject { ["properties"] = new JsonObject { [family.Key] = new JsonObject { ["const"] = word } }, ["required"] = Strings([family.Key]) },
            ["then"] = Reference(Definition(family.Find(word)!), definitions, () => Variant(family, word, definitions)),
        });
        var known = new JsonObject { ["enum"] = Strings(family.Words) };
        return new()
        {
            ["type"] = "object",
            ["properties"] = new JsonObject { [family.Key] = known },
            ["required"] = Strings([family.Key]),
            ["allOf"] = new JsonArray([.. branches]),
        };
    }

    private static JsonObject Variant(Variants family, string word, SortedDictionary<string, JsonObject> definitions)
    {
        var type = PlanType.Of(family.Find(word)!);
        var schema = Record(type, definitions);
        schema["properties"]!.AsObject().Insert(type.Members is [{ Name: "name" }, ..] ? 1 : 0, family.Key, new JsonObject { ["const"] = word });
        return schema;
    }

    private static string Definition(Type type) => JsonNamingPolicy.CamelCase.ConvertName(type.Name);

    private static JsonObject Reference(string name, SortedDictionary<string, JsonObject> definitions, Func<JsonObject> define)
    {
        if (!definitions.ContainsKey(name))
        {
            // Reserved first: a definition may refer to itself.
            definitions[name] = [];
            definitions[name] = define();
        }

        return new() { ["$ref"] = "#/$defs/" + name };
    }

    private static void Describe(JsonObject schema, string? description)
    {
        if (description is not null) schema.Insert(0, "description", description);
    }

    private static JsonArray Alternatives(IEnumerable<string> members) => new([.. members.Select(member => new JsonObject { ["required"] = Strings([member]) })]);

    private static JsonArray Strings(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);
}
