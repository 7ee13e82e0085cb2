using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace MonitorSim.Tests.Docs;

/// <summary>Links between the pages lead somewhere.</summary>
public partial class LinkTests
{
    [Fact]
    public void Every_link_to_a_file_finds_it()
    {
        var root = Root();
        var pages = Directory.EnumerateFiles(root, "*.md").Concat(new[] { "docs", "notebooks", "traces", "bench" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(root, folder), "*.md", SearchOption.AllDirectories)).Where(page => !page.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}")));
        var links = pages.SelectMany(page => Link().Matches(File.ReadAllText(page)).Select(match => (Page: page, Target: match.Groups[1].Value))).ToList();
        Assert.NotEmpty(links);
        Assert.Empty(links.Where(link => !Leads(link.Page, link.Target)).Select(link => $"{Path.GetRelativePath(root, link.Page)}: {link.Target}"));
    }

    private static bool Leads(string page, string target)
    {
        if (target.Contains("://", StringComparison.Ordinal)) return true;
        var (file, anchor) = target.Split('#') is [var first, var second] ? (first, second) : (target, "");
        var path = file.Length == 0 ? page : Path.Combine(Path.GetDirectoryName(page)!, file);
        if (anchor.Length == 0) return File.Exists(path) || Directory.Exists(path);
        return File.Exists(path) && File.ReadLines(path).Any(line =>
            line.StartsWith('#') && string.Equals(line.TrimStart('#').Trim().Replace(' ', '-'), anchor, StringComparison.OrdinalIgnoreCase));
    }

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../.."));
}
