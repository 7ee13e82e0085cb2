using MonitorSim.Plans;

namespace MonitorSim.Synthesis;

/// <summary>Writes scenarios as JSON that <see cref="ScenarioReader"/> gives back as the same scenario. Members that say nothing new are left out.</summary>
public static class ScenarioWriter
{
    /// <summary>The scenario as JSON text.</summary>
    public static string Write(Scenario scenario) => RecordWriter.Write(scenario);
}
