namespace MonitorSim.Cli;

/// <summary>Names of results where there are several recordings: the recording's name goes in, and a number where two would share one.</summary>
internal static class Several
{
    /// <summary>The file that recording <paramref name="index"/> is written to; <c>-</c> stays standard output.</summary>
    public static string Name(string path, IReadOnlyList<string> traces, int index) => traces.Count == 1 || path == "-"
        ? path
        : Path.Combine(Path.GetDirectoryName(path) ?? "", $"{Path.GetFileNameWithoutExtension(path)}-{Stems(traces)[index]}{Path.GetExtension(path)}");

    /// <summary>The folder that recording <paramref name="index"/> is written to.</summary>
    public static string Folder(string folder, IReadOnlyList<string> traces, int index) => traces.Count == 1 ? folder : Path.Combine(folder, Stems(traces)[index]);

    // Two days' recordings often have one name in two folders; and some file systems do not tell A from a.
    private static List<string> Stems(IReadOnlyList<string> traces)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var stems = new List<string>();
        foreach (var trace in traces)
        {
            var stem = trace == "-" ? "input" : Path.GetFileNameWithoutExtension(trace);
            var name = stem;
            for (var number = 2; !taken.Add(name); number++) name = FormattableString.Invariant($"{stem}-{number}");
            stems.Add(name);
        }

        return stems;
    }
}
