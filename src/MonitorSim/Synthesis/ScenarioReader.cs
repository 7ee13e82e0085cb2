using MonitorSim.Plans;

namespace MonitorSim.Synthesis;

/// <summary>Reads scenarios from JSON by the rules of plans: quantities with units, comments allowed, and all errors in one go, each as
/// <c>file(line,column): what is wrong; what would be right</c>.</summary>
public static class ScenarioReader
{
    private static readonly RecordReader<Scenario> Reader = new("scenario", ScenarioChecks.Findings);

    /// <summary>Reads a scenario from a file.</summary>
    /// <exception cref="InputException">No such file, no JSON, or a scenario with errors: all of them.</exception>
    public static Scenario Read(string path) => Parse(Reader.Bytes(path), path);

    /// <summary>Reads a scenario from the bytes of a file (UTF-8, with or without byte order mark).</summary>
    /// <param name="utf8">The bytes.</param>
    /// <param name="fileName">What messages call it.</param>
    /// <exception cref="InputException">No JSON, or a scenario with errors: all of them.</exception>
    public static Scenario Parse(byte[] utf8, string fileName) => Parse(Reader.Text(utf8, fileName), fileName);

    /// <summary>Reads a scenario from text.</summary>
    /// <param name="text">JSON; comments and trailing commas are allowed.</param>
    /// <param name="fileName">What messages call it.</param>
    /// <exception cref="InputException">No JSON, or a scenario with errors: all of them.</exception>
    public static Scenario Parse(string text, string fileName = "scenario") => Reader.Parse(text, fileName);
}
