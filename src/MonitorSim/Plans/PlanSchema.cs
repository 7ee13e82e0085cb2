namespace MonitorSim.Plans;

/// <summary>The JSON Schema (draft 2020-12) of plans, made of the records, for editors and other tools.</summary>
/// <remarks>It knows members, words and spellings. What depends on more than one member (units after the axis's motion, stops that
/// are needed, names that must be known) only <see cref="PlanReader"/> checks. Descriptions come from the library's documentation file.</remarks>
public static class PlanSchema
{
    /// <summary>The schema as JSON text.</summary>
    public static string Json() => RecordSchema.Json(typeof(Plan), "plan");
}
