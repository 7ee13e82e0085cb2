namespace MonitorSim.Reports.Page;

/// <summary>The page's own style and script, which come along in the assembly.</summary>
internal static class PageFile
{
    public static string Read(string name)
    {
        using var stream = typeof(PageFile).Assembly.GetManifestResourceStream($"MonitorSim.Reports.Page.{name}")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
