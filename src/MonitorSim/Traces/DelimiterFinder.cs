namespace MonitorSim.Traces;

/// <summary>Works the separator out: the one at which most rows fall into equally many cells.</summary>
internal static class DelimiterFinder
{
    // In this order where several fit: a comma may also be a decimal mark, so it comes last.
    private static readonly char[] Candidates = ['\t', ';', '|', ','];

    /// <summary>The separator and the rows it makes.</summary>
    /// <param name="head">UTF-8 text.</param>
    /// <param name="whole">Whether that is the whole file.</param>
    /// <param name="linesBefore">Lines of the file before the head.</param>
    /// <param name="decimalMark">The decimal mark, where it is given.</param>
    public static (char Delimiter, List<HeadRow> Rows) Find(ReadOnlyMemory<byte> head, bool whole, long linesBefore, char? decimalMark)
    {
        var tried = Candidates.Select(c => (Delimiter: c, Rows: HeadRows.Cut(head, whole, c, linesBefore))).ToList();
        var scored = tried.Select(t => (t.Delimiter, t.Rows, Usual: HeadRows.Usual(t.Rows)))
            .Select(t => (t.Delimiter, t.Rows, t.Usual.Cells, Score: t.Usual.Cells > 1 ? (double)t.Usual.Rows / t.Rows.Count : 0)).ToList();
        var best = scored.Max(s => s.Score);
        var chosen = best == 0 ? scored[^1] : scored.First(s => s.Score >= 0.75 * best);

        // One column with decimal commas: the comma cuts every row in two, but not the header.
        if (chosen is { Delimiter: ',', Cells: 2 } && decimalMark != '.' && OneColumnOfDecimals(chosen.Rows)) chosen = scored[1];
        return (chosen.Delimiter, chosen.Rows);
    }

    private static bool OneColumnOfDecimals(List<HeadRow> rows)
    {
        var named = rows.FindIndex(r => !r.IsComment);
        return named >= 0 && rows[named].Cells.Length == 1
            && rows.Skip(named + 1).All(r => r.Cells.Length == 1 || (r.Cells.Length == 2 && r.Cells[0].TrimStart('-', '+').All(char.IsAsciiDigit)
                && r.Cells[1].Length > 0 && char.IsAsciiDigit(r.Cells[1][0])));
    }
}
