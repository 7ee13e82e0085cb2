using System.Text;

namespace MonitorSim.Traces;

/// <summary>Works out from a recording's head how it is written, following what is given.</summary>
internal sealed class LayoutFinder(string file, Dialect given)
{
    private readonly List<string> _notes = [];

    /// <exception cref="InputException">Nothing but a header, no time and no rate, names that repeat.</exception>
    public Layout Find(HeadStream text, TextEncoding encoding)
    {
        if (given.TimeColumn is not null && given.Rate is not null)
            throw Bad("both a time column and a rate are given", "give one of them");
        var (skipped, linesSkipped) = SkipLines(text.Head, given.SkipRows ?? 0);
        if (linesSkipped < (given.SkipRows ?? 0))
            throw Bad($"there are only {linesSkipped} lines, fewer than the {given.SkipRows} to skip", "give a smaller number for skipRows");
        var rest = text.HeadMemory[skipped..];
        if (given.SkipRows is null && SeparatorHint(rest.Span) is { } hinted)
        {
            skipped += hinted;
            linesSkipped++;
            rest = rest[hinted..];
        }

        var (delimiter, rows) = given.Delimiter is { } fixedDelimiter
            ? (fixedDelimiter, HeadRows.Cut(rest, text.HeadIsAll, fixedDelimiter, linesSkipped))
            : DelimiterFinder.Find(rest, text.HeadIsAll, linesSkipped, given.Decimal);
        if (rows.Count == 0) throw Bad("the file is empty", "a recording has a header and at least one sample");
        var top = given.SkipRows is null ? Top(rows) : 0;
        if (rows[top].IsComment) rows[top].Cells[0] = WithoutCommentMark(rows[top].Cells[0]);
        var columns = rows[top].Cells.Length;
        ColumnPlan.RefuseTooMany(columns, file);
        var below = rows.Skip(top).Where(r => r.Cells.Length == columns).ToList();
        var mark = given.Decimal ?? DecimalMark(delimiter, below);
        var header = IsHeader(below, mark);
        var units = header && (given.UnitsRow ?? IsUnitsRow(rows, top + 1, columns, mark));
        var firstSample = top + (header ? 1 : 0) + (units ? 1 : 0);
        if (given.UnitsRow == true && !header) throw Bad("a units row is given, but there is no header above it", "name the columns in the row above the units");
        if (firstSample >= rows.Count && !text.HeadIsAll) throw Bad($"the first {text.Head.Length >> 10} kB hold no whole sample", "shorten the lines above the samples, or cut the columns into several files");
        if (firstSample >= rows.Count) throw Bad("there is a header, but no sample below it", "a recording has at least one sample");

        var names = Names(rows[top], header);
        var stated = Enumerable.Range(0, columns)
            .Select(i => (units ? UnitCell(rows[top + 1], i) : null) ?? (header ? HeaderText.Stated(names[i]) : null)).ToArray();
        var samples = rows.Skip(firstSample).Where(r => r.Cells.Length == columns).ToList();
        var (time, timeUnit) = given.Rate is null ? new TimeColumnFinder(file, given, _notes).Find(names, stated, samples) : (-1, null);
        Note(delimiter, mark, header, rows, top, units);
        var found = new DialectFound(
            new Dialect
            {
                Delimiter = delimiter,
                Decimal = mark,
                SkipRows = given.SkipRows ?? (int)(rows[top].Line - 1),
                UnitsRow = units,
                Encoding = encoding.Name,
                TimeColumn = time < 0 ? null : names[time],
                TimeUnit = timeUnit,
                Rate = given.Rate,
            },
            header ? rows[top].Line : null, rows[firstSample].Line, encoding.MarkLength > 0, _notes);
        return new Layout
        {
            Delimiter = delimiter,
            Decimal = mark,
            Names = names,
            Units = stated,
            Time = time,
            TimeUnit = timeUnit,
            Offset = skipped + rows[firstSample].Offset,
            SpacedQuotes = text.Head.IndexOf(" \""u8) >= 0,
            LinesBefore = rows[firstSample].Line - 1,
            Found = found,
        };
    }

    // The header, or the first sample: the first row that has as many cells as most, and is no comment.
    private int Top(List<HeadRow> rows)
    {
        var usual = HeadRows.Usual(rows.Where(r => !r.IsComment).ToList()).Cells;
        var first = rows.FindIndex(r => r.Cells.Length == usual && !r.IsComment);
        if (first < 0) throw Bad("there is nothing but comments", "a recording has a header and at least one sample");

        // Numerical tools write the header as the last comment.
        if (first > 0 && rows[first - 1] is { IsComment: true } comment && comment.Cells.Length == usual && usual > 1
            && !rows[first].Cells.All(c => c.Length > 0 && !IsNumber(c, '.') && !IsNumber(c, ',')))
            return first - 1;

        // A header with another number of names than there are cells is an error, not a preamble.
        if (first > 0 && rows[first - 1] is { IsComment: false } above && above.Cells.Length > 1 && usual > 1
            && above.Cells.Length >= usual - 1 && HasNumber(rows[first].Cells) && !HasNumber(above.Cells))
        {
            throw new InputException(new Problem($"{file}(row {above.Line})",
                $"the header has {above.Cells.Length} names, but the row below it has {usual} cells", "name every column once"));
        }

        return first;
    }

    // "# t" and "#t" are a time behind a comment mark; "%load" is a name.
    private static string WithoutCommentMark(string cell)
    {
        var bare = cell.TrimStart('#', '%', '/');
        return bare.Trim().Length > 0 && (cell[0] == '#' || bare[0] == ' ') ? bare.Trim() : cell;
    }

    private static bool HasNumber(string[] cells) => cells.Any(c => IsNumber(c, '.') || IsNumber(c, ','));

    private static bool IsHeader(List<HeadRow> rows, char mark)
    {
        var cells = rows[0].Cells;
        if (cells.All(c => c.Length == 0)) return false;
        if (cells.Any(c => IsNumber(c, mark))) return cells.Any(HeaderText.IsTime);
        if (cells.Any(c => IsoDateTime.Parse(Encoding.UTF8.GetBytes(c)) is not null)) return false;
        return !cells.All(c => c.Length == 0 || HeaderText.IsSwitchWord(c) || IsMissing(c));
    }

    // Words over numbers are units; words over words would be samples.
    private static bool IsUnitsRow(List<HeadRow> rows, int at, int columns, char mark)
    {
        if (at >= rows.Count || rows[at].Cells.Length != columns) return false;
        var cells = rows[at].Cells;
        if (cells.All(c => c.Length == 0) || cells.Any(c => IsNumber(c, mark))) return false;
        if (!cells.All(c => c.Length == 0 || c == "-" || HeaderText.LooksLikeUnit(c)) || cells.All(c => c.Length == 0 || IsMissing(c))) return false;
        var below = rows.Skip(at + 1).Where(r => r.Cells.Length == columns).Take(50).ToList();
        return Enumerable.Range(0, columns).Any(i => cells[i].Length > 0 && !IsMissing(cells[i]) && below.Any(r => IsNumber(r.Cells[i], mark)));
    }

    private static char DecimalMark(char delimiter, List<HeadRow> rows)
    {
        int commas = 0, points = 0;
        foreach (var cell in rows.SelectMany(r => r.Cells))
        {
            if (cell.Contains(',') && IsNumber(cell, ',')) commas++;
            else if (cell.Contains('.') && IsNumber(cell, '.')) points++;
        }

        // Where the comma separates, only quoted cells can hold one.
        return commas > points ? ',' : '.';
    }

    private string[] Names(HeadRow row, bool header) =>
        row.Cells.Select((cell, i) => header && cell.Length > 0 ? cell : $"column {i + 1}").ToArray();

    private static string? UnitCell(HeadRow row, int i) =>
        i < row.Cells.Length && HeaderText.Strip(row.Cells[i]) is { Length: > 0 } unit && unit != "-" ? unit : null;

    private void Note(char delimiter, char mark, bool header, List<HeadRow> rows, int top, bool units)
    {
        if (given.Delimiter is null) _notes.Add($"cells are separated by {Spell(delimiter)}");
        if (given.Decimal is null) _notes.Add($"the decimal mark is '{mark}'");
        if (given.SkipRows is null && rows[top].Line > 1) _notes.Add($"the first {rows[top].Line - 1} lines are passed over");
        if (!header) _notes.Add("there is no header; columns are called 'column 1' and so on");
        if (given.UnitsRow is null && units) _notes.Add($"row {rows[top + 1].Line} holds units");
    }

    private static string Spell(char delimiter) => delimiter == '\t' ? "tabs" : $"'{delimiter}'";

    private InputException Bad(string what, string fix) => new(new Problem(file, what, fix));

    private static bool IsNumber(string cell, char mark) =>
        cell.Length > 0 && ExactDecimal.Parse(Encoding.UTF8.GetBytes(cell), (byte)mark) is not null;

    private static bool IsMissing(string cell) => DecimalText.IsMissing(Encoding.UTF8.GetBytes(cell));

    // Spreadsheets write "sep=;" into the first line.
    private static int? SeparatorHint(ReadOnlySpan<byte> head)
    {
        if (head.Length < 6 || !Encoding.ASCII.GetString(head[..4]).Equals("sep=", StringComparison.OrdinalIgnoreCase)) return null;
        var end = head.IndexOfAny((byte)'\r', (byte)'\n');
        return end is > 4 and <= 6 ? SkipLines(head, 1).Bytes : null;
    }

    /// <summary>Passes over physical lines: CR, LF and CR LF each end one.</summary>
    private static (int Bytes, int Lines) SkipLines(ReadOnlySpan<byte> head, int count)
    {
        var at = 0;
        for (var lines = 0; lines < count; lines++)
        {
            var end = head[at..].IndexOfAny((byte)'\r', (byte)'\n');
            if (end < 0) return (head.Length, lines + (at < head.Length ? 1 : 0));
            at += end + 1;
            if (head[at - 1] == '\r' && at < head.Length && head[at] == '\n') at++;
        }

        return (at, count);
    }
}
