namespace MonitorSim.Traces;

/// <summary>Decides which columns are kept, and as what.</summary>
internal static class ColumnPlan
{
    /// <summary>More than any machine records beside each other: such a file has its samples beside each other instead of below.</summary>
    private const int MostColumns = 10_000;

    /// <exception cref="InputException">There are more columns than a recording has.</exception>
    public static void RefuseTooMany(int columns, string place)
    {
        if (columns > MostColumns)
            throw new InputException(new Problem(place, FormattableString.Invariant($"there are {columns} columns; a recording has at most {MostColumns}"), "give each sample a row and each quantity a column, or cut the file into parts"));
    }

    /// <exception cref="InputException">A wanted column is not there, or is there twice.</exception>
    public static Cells[] Of(Layout layout, IReadOnlyCollection<ColumnRequest>? wanted, string place)
    {
        var problems = new List<Problem>();
        var names = layout.Names;
        var mark = (byte)layout.Decimal;
        var cells = new List<Cells>();
        if (wanted is null)
        {
            for (var i = 0; i < names.Length; i++)
            {
                if (Array.IndexOf(names, names[i]) != i)
                    problems.Add(new Problem(place, $"two columns are called '{names[i]}' (the {Ordinal(Array.IndexOf(names, names[i]))} and the {Ordinal(i)})", "name each column once"));
                else if (i != layout.Time)
                    cells.Add(new OpenCells(i, names[i], layout.Units[i], mark));
            }
        }
        else
        {
            foreach (var request in wanted.GroupBy(w => w.Name, StringComparer.Ordinal))
            {
                var i = Array.IndexOf(names, request.Key);
                if (i < 0) problems.Add(TimeColumnFinder.Missing(place, request.Key, names, "column"));
                else if (Array.LastIndexOf(names, request.Key) != i)
                    problems.Add(new Problem(place, $"two columns are called '{request.Key}'", "name each column once"));
                else if (request.Any(r => r.Kind == ColumnKind.Number)) cells.Add(new NumberCells(i, names[i], layout.Units[i], mark));
                else cells.Add(new WordCells(i, names[i], layout.Units[i]));
            }
        }

        if (problems.Count > 0) throw new InputException(problems);
        return [.. cells.OrderBy(c => c.Index)];
    }

    private static string Ordinal(int index) => (index + 1) switch
    {
        1 => "1st",
        2 => "2nd",
        3 => "3rd",
        var n => n + "th",
    };
}
