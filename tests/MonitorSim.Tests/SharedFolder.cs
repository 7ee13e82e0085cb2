namespace MonitorSim.Tests;

/// <summary>Files beside the repository that are no part of it: worked cases and open recordings.</summary>
internal static class SharedFolder
{
    /// <summary>The folder of worked cases, or null where it is absent.</summary>
    public static string? Cases => Beside("cases");

    /// <summary>An open recording, such as <c>kr300/run_a.csv</c>; skips the test where it is absent.</summary>
    public static string Recording(string name)
    {
        var folder = Environment.GetEnvironmentVariable("MONITORSIM_DATASETS") ?? Beside("datasets");
        var path = folder is null ? null : Path.Combine(folder, name);
        Skip.IfNot(File.Exists(path), $"the recording {name} is not there; set MONITORSIM_DATASETS to the folder that holds it");
        return path!;
    }

    private static string? Beside(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var shared = Path.Combine(folder.FullName, "..", "shared", name);
            if (File.Exists(Path.Combine(folder.FullName, "MonitorSim.sln")) && Directory.Exists(shared)) return Path.GetFullPath(shared);
        }

        return null;
    }
}
