using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>The JSON Schema (draft 2020-12) of replay results, as <see cref="ResultJson"/> writes them.</summary>
public static class ResultSchema
{
    private static readonly JsonSerializerOptions Legible =
        new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static JsonObject Text => new() { ["type"] = "string" };

    private static JsonObject Flag => new() { ["type"] = "boolean" };

    private static JsonObject Count => new() { ["type"] = "integer", ["minimum"] = 0 };

    private static JsonObject Number => new() { ["type"] = "number" };

    private static JsonObject Time => new() { ["type"] = "number", ["description"] = "Seconds since the first sample." };

    private static JsonObject Hash => OrNull(new() { ["type"] = "string", ["pattern"] = "^[0-9a-f]{64}$" });

    private static JsonObject Axis => Described(Text, "The axis's name in the plan.");

    private static JsonObject Monitor => Described(Text, "The monitor's name, or that of a stop (SS1, SS2, SOS, STO, SBC) or of two channels.");

    private static JsonObject Side => Described(Text, "Which limit: upper, lower, approach, increment, window, speed, ramp, deceleration, timeLimit, invalid input.");

    /// <summary>The schema as JSON text.</summary>
    public static string Json()
    {
        var root = Object("A replay's result; every number in SI.",
            ("result", new() { ["const"] = 1, ["description"] = "Format version." }),
            ("plan", Object("The plan.", ("title", Text), ("sha256", Hash))),
            ("trace", Object("The recording.", ("file", Text), ("sha256", Hash), ("samples", Count), ("duration", Described(Number, "Last sample minus first, s.")))),
            ("verdict", new() { ["enum"] = new JsonArray("clean", "tripped") }),
            ("trips", List(Trip())),
            ("excursions", List(Object("A run over a limit, tripping or not.", ("axis", Axis), ("monitor", Monitor), ("side", Side), ("from", Time), ("until", Described(Number, "Its last cycle, s.")),
                ("duration", Described(Number, "Last cycle minus first, s.")), ("peak", Number), ("peakAt", Time), ("trips", Flag)))),
            ("outputs", List(Object("An output, off at first.", ("axis", Axis), ("monitor", Monitor), ("edges", List(Object("A change.", ("time", Time), ("on", Flag))))))),
            ("states", List(Object("An axis's state, Running at first.", ("axis", Axis), ("changes", List(Object("A change.", ("time", Time), ("state", Words(Enum.GetNames<AxisState>())), ("cause", Text))))))),
            ("headroom", List(Object("Limit minus critical limit of a side; positive where there is room.", ("axis", Axis), ("monitor", Monitor), ("side", Side), ("level", OrNull(Count)),
                ("critical", OrNull(Number)), ("limit", Number), ("headroom", OrNull(Number)), ("percent", OrNull(Number)), ("time", OrNull(Time)), ("unit", Text)))),
            ("coverage", List(Object("How much the recording challenged a monitor.", ("axis", Axis), ("monitor", Monitor), ("requests", Count), ("watched", Described(Number, "s.")), ("trips", Count)))),
            ("expect", List(Object("An expectation of the plan.", ("index", Count), ("holds", Flag), ("because", Text)))),
            ("events", List(Object("The log.", ("time", Time), ("axis", Axis), ("source", Text), ("event", Text)))),
            ("warnings", new() { ["type"] = "array", ["items"] = Text }));
        root.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        root.Insert(1, "title", "MonitorSim result");
        return root.ToJsonString(Legible) + "\n";
    }

    private static JsonObject Trip() => Object("A trip and its evidence.",
        ("axis", Axis), ("monitor", Monitor), ("function", Text), ("side", Side), ("level", OrNull(Count)),
        ("sample", Described(Count, "Index of the sample seen at the trip's cycle.")), ("time", Time), ("value", OrNull(Number)), ("limit", OrNull(Number)), ("unit", OrNull(Text)), ("peak", OrNull(Number)),
        ("requestedAt", Time), ("watchingAt", OrNull(Time)), ("exceededAt", Time), ("reaction", Words(Choice.Names(typeof(Reaction)))),
        ("avoidedBy", Object("What alone would have avoided it.", ("limit", OrNull(Number)), ("filterAbove", OrNull(Number)), ("delayAbove", OrNull(Number)), ("exact", Flag))));

    private static JsonObject Object(string description, params (string Name, JsonObject Schema)[] members) => new()
    {
        ["description"] = description,
        ["type"] = "object",
        ["properties"] = new JsonObject(members.Select(member => KeyValuePair.Create(member.Name, (JsonNode?)member.Schema))),
        ["required"] = new JsonArray([.. members.Select(member => (JsonNode)member.Name)]),
        ["additionalProperties"] = false,
    };

    private static JsonObject List(JsonObject item) => new() { ["type"] = "array", ["items"] = item };

    private static JsonObject OrNull(JsonObject schema) => new() { ["anyOf"] = new JsonArray(schema, new JsonObject { ["type"] = "null" }) };

    private static JsonObject Words(IEnumerable<string> words) => new() { ["enum"] = new JsonArray([.. words.Select(word => (JsonNode)word)]) };

    private static JsonObject Described(JsonObject schema, string description)
    {
        schema["description"] = description;
        return schema;
    }
}
