using MonitorSim.Plans;

namespace MonitorSim.Cli;

/// <summary>What commands read.</summary>
internal static class Input
{
    /// <summary>Reads a plan; <c>-</c> is standard input.</summary>
    /// <exception cref="InputException">No such file, or a plan with errors: all of them.</exception>
    public static Plan Plan(string path)
    {
        if (path != "-") return PlanReader.Read(path);
        using var bytes = new MemoryStream();
        using (var stream = Console.OpenStandardInput()) stream.CopyTo(bytes);
        return PlanReader.Parse(bytes.ToArray(), "standard input");
    }
}
