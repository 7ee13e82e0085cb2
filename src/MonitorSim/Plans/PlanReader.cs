using System.Security.Cryptography;
using System.Text;

namespace MonitorSim.Plans;

/// <summary>Reads plans from JSON. All errors come in one go, each as <c>file(line,column): what is wrong; what would be right</c>.</summary>
public static class PlanReader
{
    /// <summary>Reads a plan from a file.</summary>
    /// <exception cref="InputException">No such file, no JSON, or a plan with errors: all of them.</exception>
    public static Plan Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (Directory.Exists(path)) throw new InputException(new Problem(path, "this is a folder", "name a plan file"));
        try
        {
            return Parse(File.ReadAllBytes(path), path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException(new Problem(path, "there is no such file", "name a plan file"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(path, $"the file cannot be read ({e.Message})", "check its permissions"));
        }
    }

    /// <summary>Reads a plan from the bytes of a file (UTF-8, with or without byte order mark); its hash is that of the bytes.</summary>
    /// <param name="utf8">The bytes.</param>
    /// <param name="fileName">What messages call it.</param>
    /// <exception cref="InputException">No JSON, or a plan with errors: all of them.</exception>
    public static Plan Parse(byte[] utf8, string fileName)
    {
        ArgumentNullException.ThrowIfNull(utf8);
        string text;
        try
        {
            var strict = new UTF8Encoding(false, throwOnInvalidBytes: true);
            var mark = utf8.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
            text = strict.GetString(utf8, mark, utf8.Length - mark);
        }
        catch (DecoderFallbackException)
        {
            throw new InputException(new Problem(fileName, "the file is not UTF-8 text", "save the plan as UTF-8"));
        }

        return Parse(text, fileName) with { Sha256 = Convert.ToHexStringLower(SHA256.HashData(utf8)) };
    }

    /// <summary>Reads a plan from text.</summary>
    /// <param name="text">JSON; comments and trailing commas are allowed.</param>
    /// <param name="fileName">What messages call it.</param>
    /// <exception cref="InputException">No JSON, or a plan with errors: all of them.</exception>
    public static Plan Parse(string text, string fileName = "plan")
    {
        ArgumentNullException.ThrowIfNull(text);
        var tree = JsonTree.Read(text, fileName);
        if (tree is not JsonTree.Object root)
            throw new InputException(new Problem($"{fileName}({tree.Line},{tree.Column})", $"a plan is an object, this is {tree.Noun}", "write { \"plan\": 1, … }"));

        var binder = new PlanBinder();
        var plan = binder.Bind(root);
        var explained = binder.Findings.Select(finding => finding.Path).ToList();
        var checks = PlanChecks.Findings(plan).Where(finding => !explained.Exists(path => path.Touches(finding.Path) || finding.Concerns.Any(path.Touches)));
        var problems = binder.Findings.Concat(checks)
            .Select(finding => (Finding: finding, Position: finding.Position ?? binder.Place(finding.Path)))
            .OrderBy(problem => problem.Position).Select(problem => problem.Finding.At(FormattableString.Invariant($"{fileName}({problem.Position.Line},{problem.Position.Column})")))
            .ToList();
        return problems.Count == 0 ? plan : throw new InputException(problems);
    }
}
