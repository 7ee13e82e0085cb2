using System.Text;

namespace MonitorSim.Plans;

/// <summary>Reads one kind of JSON file (plans, scenarios) into its record. All errors come in one go, each with its line and column.</summary>
/// <typeparam name="T">The record.</typeparam>
/// <param name="noun">What the file is, such as <c>plan</c>.</param>
/// <param name="checks">What is wrong with a record beyond its spelling.</param>
internal sealed class RecordReader<T>(string noun, Func<T, IEnumerable<Finding>> checks)
{
    /// <summary>The bytes of a file.</summary>
    /// <exception cref="InputException">There is none, or it cannot be read.</exception>
    public byte[] Bytes(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (Directory.Exists(path)) throw new InputException(new Problem(path, "this is a folder", $"name a {noun} file"));
        try
        {
            using var file = File.OpenRead(path);
            return JsonBytes.Read(file, path, noun);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException(new Problem(path, "there is no such file", $"name a {noun} file"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(path, $"the file cannot be read ({e.Message})", "check its permissions"));
        }
    }

    /// <summary>The text of a file's bytes: UTF-8, with or without byte order mark.</summary>
    /// <exception cref="InputException">It is not UTF-8.</exception>
    public string Text(byte[] utf8, string fileName)
    {
        ArgumentNullException.ThrowIfNull(utf8);
        try
        {
            var strict = new UTF8Encoding(false, throwOnInvalidBytes: true);
            var mark = utf8.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
            return strict.GetString(utf8, mark, utf8.Length - mark);
        }
        catch (DecoderFallbackException)
        {
            throw new InputException(new Problem(fileName, "the file is not UTF-8 text", $"save the {noun} as UTF-8"));
        }
    }

    /// <summary>The record that a text describes.</summary>
    /// <exception cref="InputException">No JSON, or errors in it: all of them.</exception>
    public T Parse(string text, string fileName)
    {
        ArgumentNullException.ThrowIfNull(text);
        var tree = JsonTree.Read(text, fileName);
        if (tree is not JsonTree.Object root)
            throw new InputException(new Problem($"{fileName}({tree.Line},{tree.Column})", $"a {noun} is an object, this is {tree.Noun}", $"write {{ \"{noun}\": 1, … }}"));

        var binder = new PlanBinder();
        var record = binder.Bind<T>(root);
        var explained = new PathSet(binder.Findings.Select(finding => finding.Path));
        var more = checks(record).Where(finding => !explained.Touches(finding.Path) && !finding.Concerns.Any(explained.Touches));
        var problems = binder.Findings.Concat(more)
            .Select(finding => (Finding: finding, Position: finding.Position ?? binder.Place(finding.Path)))
            .OrderBy(problem => problem.Position).Select(problem => problem.Finding.At(FormattableString.Invariant($"{fileName}({problem.Position.Line},{problem.Position.Column})")))
            .ToList();
        return problems.Count == 0 ? record : throw new InputException(problems);
    }
}
