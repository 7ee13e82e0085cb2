using MonitorSim.Plans;

namespace MonitorSim.Synthesis;

/// <summary>The JSON Schema (draft 2020-12) of scenarios, made of the records, for editors and other tools.</summary>
/// <remarks>It knows members, words and spellings; what depends on more than one member only <see cref="ScenarioReader"/> checks.</remarks>
public static class ScenarioSchema
{
    /// <summary>The schema as JSON text.</summary>
    public static string Json() => RecordSchema.Json(typeof(Scenario), "scenario");
}
