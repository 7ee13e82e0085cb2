using MonitorSim.Plans;
using MonitorSim.Synthesis;

namespace MonitorSim.Cli;

/// <summary>What commands read.</summary>
internal static class Input
{
    private const string StandardInput = "standard input";

    /// <summary>Reads a plan; <c>-</c> is standard input.</summary>
    /// <exception cref="InputException">No such file, or a plan with errors: all of them.</exception>
    public static Plan Plan(string path, CancellationToken cancel) => path == "-" ? PlanReader.Parse(Bytes(cancel), StandardInput) : PlanReader.Read(path);

    /// <summary>Reads a scenario; <c>-</c> is standard input.</summary>
    /// <exception cref="InputException">No such file, or a scenario with errors: all of them.</exception>
    public static Scenario Scenario(string path, CancellationToken cancel) => path == "-" ? ScenarioReader.Parse(Bytes(cancel), StandardInput) : ScenarioReader.Read(path);

    // Standard input may never end: then the wait does, and what is read of it is lost.
    private static byte[] Bytes(CancellationToken cancel)
    {
        var bytes = new MemoryStream();
        try
        {
            Console.OpenStandardInput().CopyToAsync(bytes, CancellationToken.None).WaitAsync(cancel).GetAwaiter().GetResult();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(StandardInput, $"it cannot be read: {e.Message}", "give a file, or its text on standard input"));
        }

        return bytes.ToArray();
    }
}
