namespace MonitorSim.Cli;

/// <summary>A file that is written aside and takes its name when it is whole, so that nobody finds half of one. A device or a pipe is no file that could be renamed:
/// it is written as it is.</summary>
internal sealed class OutputFile : IDisposable
{
    private readonly string _named;
    private readonly (Stream Stream, string? Aside, string Path) _file;

    /// <param name="path">Where it goes; its folder is made if it is not there.</param>
    /// <param name="cancel">Stops the writing.</param>
    /// <exception cref="InputException">It cannot be written there.</exception>
    public OutputFile(string path, CancellationToken cancel)
    {
        Writing.Require(path, "name a file, or - for standard output");
        if (Directory.Exists(path)) throw new InputException(new Problem(path, "this is a folder", "name a file"));
        _named = path;
        _file = Writing.To(path, () => Straight(path) is { } straight ? (straight, null, path) : Aside(path));
        Stream = new OutputStream(_file.Stream, path, cancel);
    }

    /// <summary>What is written so far.</summary>
    public Stream Stream { get; }

    /// <summary>Nothing more will be written: the file takes its name.</summary>
    /// <exception cref="InputException">It cannot be written there.</exception>
    public void Complete()
    {
        Stream.Dispose();
        if (_file.Aside is { } aside) Writing.To(_named, () => File.Move(aside, _file.Path, overwrite: true));
    }

    /// <summary>Without <see cref="Complete"/> nothing stays.</summary>
    public void Dispose()
    {
        try
        {
            Stream.Dispose();
        }
        catch (InputException)
        {
            // It was said where it happened, and what is left to write goes nowhere.
        }

        if (_file.Aside is { } aside) File.Delete(aside);
    }

    private static (Stream Stream, string? Aside, string Path) Aside(string path)
    {
        // What a link leads to gets the text; the link stays.
        var full = File.Exists(path) && File.ResolveLinkTarget(path, returnFinalTarget: true) is { } target ? target.FullName : Path.GetFullPath(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        return (File.Create(full + ".part"), full + ".part", full);
    }

    private static FileStream? Straight(string path)
    {
        if (!File.Exists(path)) return null;
        var stream = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        if (!IsFile(stream) || IsDescriptor(path)) return stream;
        stream.Dispose();
        return null;
    }

    // A pipe cannot seek; a device has no length that could be set.
    private static bool IsFile(FileStream stream)
    {
        if (!stream.CanSeek) return false;
        if (stream.Length > 0) return true;
        try
        {
            stream.SetLength(0);
            return true;
        }
        catch (IOException)
        {
            return false;
        }
    }

    // What the shell opened, such as /dev/stdout, is written where it stands.
    private static bool IsDescriptor(string path) =>
        new FileInfo(path).LinkTarget is not null && Path.GetFullPath(path) is var full && (full.StartsWith("/dev/", StringComparison.Ordinal) || full.StartsWith("/proc/", StringComparison.Ordinal));
}
