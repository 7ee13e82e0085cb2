namespace MonitorSim.Tests;

/// <summary>Files beside the repository that are no part of it: worked cases.</summary>
internal static class SharedFolder
{
    /// <summary>The folder of worked cases, or null where it is absent.</summary>
    public static string? Cases
    {
        get
        {
            for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            {
                var cases = Path.Combine(folder.FullName, "..", "shared", "cases");
                if (File.Exists(Path.Combine(folder.FullName, "MonitorSim.sln")) && Directory.Exists(cases)) return Path.GetFullPath(cases);
            }

            return null;
        }
    }
}
