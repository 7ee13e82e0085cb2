namespace MonitorSim.Traces;

/// <summary>The kinds of problems of a recording; problems are counted by kind.</summary>
internal enum ProblemKind
{
    Quoting,
    RaggedRow,
    TruncatedRow,
    TimeMissing,
    TimeUnreadable,
    TimeRepeated,
    TimeBackward,
    NotANumber,
    OutOfRange,
    NotText,
}

/// <summary>Counts the problems of a recording by kind and keeps the first ten of each.</summary>
internal sealed class ProblemList
{
    private const int Kept = 10;
    private readonly SortedDictionary<ProblemKind, (List<Problem> First, long Count)> _kinds = [];
    private readonly string _file;

    public ProblemList(string file) => _file = file;

    public bool Any => _kinds.Count > 0;

    /// <summary>The file's name as it stands in the places of problems.</summary>
    public string File => _file;

    /// <summary>Adds one; its texts are made only while they are kept.</summary>
    public void Add(ProblemKind kind, long line, string? column, Func<(string What, string Fix)> texts)
    {
        var (first, count) = _kinds.TryGetValue(kind, out var known) ? known : ([], 0);
        if (first.Count < Kept)
        {
            var (what, fix) = texts();
            var place = column is null ? $"{_file}(row {line})" : $"{_file}(row {line}, column '{column}')";
            first.Add(new Problem(place, what, fix));
        }

        _kinds[kind] = (first, count + 1);
    }

    /// <exception cref="InputException">There is any problem.</exception>
    public void ThrowIfAny()
    {
        if (!Any) return;
        var all = new List<Problem>();
        foreach (var (first, count) in _kinds.Values)
        {
            all.AddRange(first);
            if (count > first.Count) all.Add(new Problem(_file, $"... and {count - first.Count} more of this kind"));
        }

        throw new InputException(all);
    }
}
