using MonitorSim.Plans;
using MonitorSim.Synthesis;

namespace MonitorSim.Cli;

/// <summary>What commands read.</summary>
internal static class Input
{
    private const string StandardInput = "standard input";

    /// <summary>Reads a plan; <c>-</c> is standard input.</summary>
    /// <exception cref="InputException">No such file, or a plan with errors: all of them.</exception>
    public static Plan Plan(string path) => path == "-" ? PlanReader.Parse(Bytes(), StandardInput) : PlanReader.Read(path);

    /// <summary>Reads a scenario; <c>-</c> is standard input.</summary>
    /// <exception cref="InputException">No such file, or a scenario with errors: all of them.</exception>
    public static Scenario Scenario(string path) => path == "-" ? ScenarioReader.Parse(Bytes(), StandardInput) : ScenarioReader.Read(path);

    private static byte[] Bytes()
    {
        using var bytes = new MemoryStream();
        using (var stream = Console.OpenStandardInput()) stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
