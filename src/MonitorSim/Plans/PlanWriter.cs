namespace MonitorSim.Plans;

/// <summary>Writes plans as JSON that <see cref="PlanReader"/> gives back as the same plan. Members that say nothing new are left out.</summary>
public static class PlanWriter
{
    /// <summary>The plan as JSON text. Scales and numbers that have no finite decimal (1/3, possible in C# only) are rounded to 17 digits.</summary>
    public static string Write(Plan plan) => RecordWriter.Write(plan);
}
