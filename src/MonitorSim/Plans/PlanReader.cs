using System.Security.Cryptography;

namespace MonitorSim.Plans;

/// <summary>Reads plans from JSON. All errors come in one go, each as <c>file(line,column): what is wrong; what would be right</c>.</summary>
public static class PlanReader
{
    private static readonly RecordReader<Plan> Reader = new("plan", PlanChecks.Findings);

    /// <summary>Reads a plan from a file.</summary>
    /// <exception cref="InputException">No such file, no JSON, or a plan with errors: all of them.</exception>
    public static Plan Read(string path) => Parse(Reader.Bytes(path), path);

    /// <summary>Reads a plan from the bytes of a file (UTF-8, with or without byte order mark); its hash is that of the bytes.</summary>
    /// <param name="utf8">The bytes.</param>
    /// <param name="fileName">What messages call it.</param>
    /// <exception cref="InputException">No JSON, or a plan with errors: all of them.</exception>
    public static Plan Parse(byte[] utf8, string fileName) =>
        Parse(Reader.Text(utf8, fileName), fileName) with { Sha256 = Convert.ToHexStringLower(SHA256.HashData(utf8)) };

    /// <summary>Reads a plan from text.</summary>
    /// <param name="text">JSON; comments and trailing commas are allowed.</param>
    /// <param name="fileName">What messages call it.</param>
    /// <exception cref="InputException">No JSON, or a plan with errors: all of them.</exception>
    public static Plan Parse(string text, string fileName = "plan") => Reader.Parse(text, fileName);
}
