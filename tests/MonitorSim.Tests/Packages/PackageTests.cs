using System.IO.Compression;
using System.Runtime.CompilerServices;

namespace MonitorSim.Tests.Packages;

/// <summary>What <c>dotnet pack</c> gives, and that the tool installs from a folder and runs the demo there.</summary>
public sealed class PackageTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("monitorsim-packages-");

    [SkippableFact]
    public void The_packages_are_whole_and_the_tool_installs_and_runs_the_demo()
    {
        Skip.IfNot(AppContext.BaseDirectory.Contains("Release", StringComparison.Ordinal), "the packages are made of the Release build: dotnet test -c Release");
        var packages = _folder.CreateSubdirectory("packages").FullName;
        Run("dotnet", "pack", Root(), "-c", "Release", "--no-build", "--nologo", "-o", packages);

        var libraries = Directory.EnumerateFiles(Path.Combine(Root(), "src"), "*.csproj", SearchOption.AllDirectories).Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal);
        Assert.Equal(libraries, Directory.EnumerateFiles(packages, "*.nupkg").Select(Name).Order(StringComparer.Ordinal));
        Assert.Equal(libraries, Directory.EnumerateFiles(packages, "*.snupkg").Select(Name).Order(StringComparer.Ordinal));
        foreach (var package in Directory.EnumerateFiles(packages, "*.nupkg")) HasReadmeLicenceAndDocs(package);
        foreach (var symbols in Directory.EnumerateFiles(packages, "*.snupkg")) Assert.Contains(Entries(symbols), entry => entry.EndsWith($"/{Name(symbols)}.pdb", StringComparison.Ordinal));

        // Only the folder is a source: what the tool needs is in its package.
        Run("dotnet", "tool", "install", "MonitorSim.Cli", "--tool-path", Path.Combine(_folder.FullName, "tool"), "--source", packages);
        var demo = Path.Combine(_folder.FullName, "demo");
        var said = Run(Path.Combine(_folder.FullName, "tool", OperatingSystem.IsWindows() ? "monitorsim.exe" : "monitorsim"), "demo", demo);
        Assert.Contains("bridge-gate-speed", said);
        Assert.NotEmpty(Directory.EnumerateFiles(demo, "*.png", SearchOption.AllDirectories));
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static void HasReadmeLicenceAndDocs(string package)
    {
        var name = Name(package);
        var entries = Entries(package);
        Assert.Contains("README.md", entries);
        Assert.Contains(entries, entry => entry.EndsWith($"/{name}.dll", StringComparison.Ordinal));
        Assert.Contains(entries, entry => entry.EndsWith($"/{name}.xml", StringComparison.Ordinal));
        using var archive = ZipFile.OpenRead(package);
        using var about = new StreamReader(archive.GetEntry($"{name}.nuspec")!.Open());
        var text = about.ReadToEnd();
        Assert.Contains("<license type=\"expression\">MIT</license>", text);
        Assert.Contains("<readme>README.md</readme>", text);
        Assert.DoesNotContain("<description>Package Description</description>", text);
    }

    private static List<string> Entries(string package)
    {
        using var archive = ZipFile.OpenRead(package);
        return [.. archive.Entries.Select(entry => entry.FullName)];
    }

    private static string Name(string package)
    {
        var name = Path.GetFileNameWithoutExtension(package);
        return name[..^".0.1.0".Length];
    }

    private string Run(string program, params string[] arguments)
    {
        var (exitCode, text) = Command.Run(_folder.FullName, program, arguments);
        Assert.True(exitCode == 0, $"{program} {string.Join(' ', arguments)}\n{text}");
        return text;
    }

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../.."));
}
