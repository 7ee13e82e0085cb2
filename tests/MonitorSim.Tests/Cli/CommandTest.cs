using MonitorSim.Cli;

namespace MonitorSim.Tests.Cli;

/// <summary>A command run in this process, with a folder of its own and what it wrote.</summary>
public abstract class CommandTest : IDisposable
{
    protected string Folder { get; } = Directory.CreateTempSubdirectory("monitorsim").FullName;

    protected StringWriter Out { get; } = new();

    protected StringWriter Error { get; } = new();

    protected MemoryStream Bytes { get; } = new();

    public void Dispose()
    {
        Directory.Delete(Folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    protected int Run(params string[] args) => CommandLine.Run(args, new Terminal(Out, Error, () => Bytes));

    protected static string Demo(string name, string file) => Path.Combine(AppContext.BaseDirectory, "traces", name, file);

    /// <summary>The same recording with a lift that does not sink.</summary>
    protected string Failing(string name)
    {
        var path = Path.Combine(Folder, "still.csv");
        var lines = File.ReadAllLines(Demo(name, "trace.csv"));
        File.WriteAllLines(path, lines.Take(700));
        return path;
    }
}
