namespace MonitorSim.Cli;

/// <summary>Names of results where there are several recordings: the recording's name goes in, and a number where two would share one.</summary>
internal sealed class Several(IReadOnlyList<string> traces)
{
    private readonly List<string> _names = Names(traces);

    /// <summary>The file that recording <paramref name="index"/> is written to; <c>-</c> stays standard output.</summary>
    public string File(string path, int index) => _names.Count == 1 || path == "-"
        ? path
        : Path.Combine(Path.GetDirectoryName(path) ?? "", $"{Path.GetFileNameWithoutExtension(path)}-{_names[index]}{Path.GetExtension(path)}");

    /// <summary>The folder that recording <paramref name="index"/> is written to.</summary>
    public string Folder(string folder, int index) => _names.Count == 1 ? folder : Path.Combine(folder, _names[index]);

    // Two days' recordings often have one name in two folders; and some file systems do not tell A from a.
    private static List<string> Names(IReadOnlyList<string> traces)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return [.. traces.Select(trace => FileName.Free(trace == "-" ? "input" : FileName.OfStem(trace), taken))];
    }
}
