namespace MonitorSim.Cli;

/// <summary>A file that is written aside and takes its name when it is whole, so that nobody finds half of one.</summary>
internal sealed class AsideFile : IDisposable
{
    private readonly string _path;
    private readonly string _aside;
    private bool _isWhole;

    /// <param name="path">Where it goes; its folder is made if it is not there.</param>
    public AsideFile(string path)
    {
        if (string.IsNullOrWhiteSpace(path)) throw new InputException(new Problem("output", "the path is empty", "name a file, or - for standard output"));
        _path = Path.GetFullPath(path);
        _aside = _path + ".part";
        Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
        Stream = File.Create(_aside);
    }

    /// <summary>What is written so far.</summary>
    public Stream Stream { get; }

    /// <summary>Nothing more will be written: the file takes its name.</summary>
    public void Complete()
    {
        Stream.Dispose();
        File.Move(_aside, _path, overwrite: true);
        _isWhole = true;
    }

    /// <summary>Without <see cref="Complete"/> nothing stays.</summary>
    public void Dispose()
    {
        Stream.Dispose();
        if (!_isWhole) File.Delete(_aside);
    }
}
