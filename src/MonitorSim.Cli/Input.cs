using MonitorSim.Plans;
using MonitorSim.Synthesis;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary>What commands read.</summary>
internal static class Input
{
    private const string StandardInput = "standard input";

    /// <summary>Reads a plan; <c>-</c> is standard input.</summary>
    /// <exception cref="InputException">No such file, or a plan with errors: all of them.</exception>
    public static Plan Plan(string path, CancellationToken cancel) => path == "-" ? PlanReader.Parse(Bytes("plan", cancel), StandardInput) : PlanReader.Read(path);

    /// <summary>Reads a scenario; <c>-</c> is standard input.</summary>
    /// <exception cref="InputException">No such file, or a scenario with errors: all of them.</exception>
    public static Scenario Scenario(string path, CancellationToken cancel) => path == "-" ? ScenarioReader.Parse(Bytes("scenario", cancel), StandardInput) : ScenarioReader.Read(path);

    private static byte[] Bytes(string noun, CancellationToken cancel)
    {
        try
        {
            using var input = new InterruptibleStream(Console.OpenStandardInput(), cancel);
            return JsonBytes.Read(input, StandardInput, noun);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(StandardInput, $"it cannot be read: {e.Message}", "give a file, or its text on standard input"));
        }
    }
}
