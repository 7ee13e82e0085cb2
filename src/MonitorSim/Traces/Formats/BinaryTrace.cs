namespace MonitorSim.Traces.Formats;

/// <summary>Makes a trace of a binary recording, by the rules of CSV: names, times, units, what is missing and what is wrong.</summary>
internal sealed class BinaryTrace
{
    // So many rows tell whether a column holds date-times.
    private const int HeadRows = 20;
    private const long FewValues = 1 << 20;
    private const long MostValuesAByte = 1 << 10;
    private const string WriteAgain = "write it again, or export it as CSV";
    private readonly BinaryTable _table;
    private readonly string _place;
    private readonly Dialect _given;
    private readonly List<string> _notes;

    private BinaryTrace(BinaryTable table, string place, Dialect given)
    {
        (_table, _place, _given) = (table, place, given);
        _notes = [$"the format is {table.Format}", .. table.Notes];
    }

    /// <summary>Reads a recording.</summary>
    /// <param name="open">Opens it, as <see cref="BinaryFormat"/> says.</param>
    /// <param name="stream">Its bytes, from the first on; it can seek.</param>
    /// <param name="place">What problems name.</param>
    /// <param name="name">What the trace is called.</param>
    /// <param name="sha256">The hash of its bytes.</param>
    /// <param name="given">What is known of how it is written. What only text has (delimiter, decimal mark, rows to skip, units row, encoding) says nothing here.</param>
    /// <param name="wanted">The columns to keep; null: all.</param>
    /// <param name="found">How it turned out to be written.</param>
    /// <param name="cancel">Stops reading.</param>
    /// <exception cref="InputException">It cannot be read.</exception>
    public static Trace Read(Func<Stream, BinaryTable> open, Stream stream, string place, string name, string sha256, Dialect given,
        IReadOnlyCollection<ColumnRequest>? wanted, out DialectFound found, CancellationToken cancel)
    {
        try
        {
            using var table = open(stream);
            RefuseEmptyPromises(table, stream.Length);
            return new BinaryTrace(table, place, given).Read(name, sha256, wanted, out found, cancel);
        }
        catch (InvalidRecordingException wrong)
        {
            throw new InputException(new Problem(place, wrong.Message, wrong.Fix));
        }
        catch (Exception e) when (e is not (InputException or OperationCanceledException))
        {
            // What the libraries that read these formats say of a damaged file is an exception of any kind.
            throw new InputException(new Problem(place, $"the file is damaged, cut off, or written in a way that cannot be read: {OneLine(e)}", WriteAgain));
        }
    }

    /// <summary>What a library says is wrong, as part of a sentence.</summary>
    public static string OneLine(Exception e) => string.Join(' ', e.Message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).TrimEnd('.');

    private Trace Read(string name, string sha256, IReadOnlyCollection<ColumnRequest>? wanted, out DialectFound found, CancellationToken cancel)
    {
        RefuseLeftOut([_given.TimeColumn]);
        var layout = Layout(_table.Columns, out var columns);
        RefuseLeftOut((wanted ?? []).Select(request => request.Name));
        found = layout.Found;
        var length = columns[0].Length;
        if (length == 0) throw new InputException(new Problem(_place, "there are columns, but no sample in them", "a recording has at least one sample"));
        var cells = ColumnPlan.Of(layout, wanted, _place);
        if (wanted is null) cells = [.. cells.Select(cell => columns[cell.Index].IsNumeric ? new NumberCells(cell.Index, cell.Name, cell.Unit, (byte)layout.Decimal) : cell)];
        using var rows = new BinaryRows(layout, cells, new ProblemList(_place));
        var (block, from) = (0, 0L);
        foreach (var count in _table.Blocks(length))
        {
            cancel.ThrowIfCancellationRequested();
            rows.Add(index => Values(columns[index], block, from, count), count);
            (block, from) = (block + 1, from + count);
        }

        return rows.ToTrace(name, sha256);
    }

    // Room is made for as many values as a file says that it has. However well they are packed, times that rise need some bits each.
    private static void RefuseEmptyPromises(BinaryTable table, long bytes)
    {
        var most = FewValues + (MostValuesAByte * bytes);
        if (table.Columns.FirstOrDefault(column => column.Length > most) is { } column)
            throw new InvalidDataException(FormattableString.Invariant($"the column '{column.Name}' says that it has {column.Length} values, more than {bytes} bytes can hold"));
    }

    // A wanted column that is there, but cannot be read, is another thing than one that is not there.
    private void RefuseLeftOut(IEnumerable<string?> asked)
    {
        var names = asked.OfType<string>().Distinct(StringComparer.Ordinal).Where(_table.LeftOut.ContainsKey).ToList();
        if (names.Count > 0) throw new InputException([.. names.Select(name => new Problem($"{_place}(column '{name}')", $"it {_table.LeftOut[name]}", "write it as one number, text or boolean a sample"))]);
    }

    private Layout Layout(IReadOnlyList<TableColumn> all, out IReadOnlyList<TableColumn> columns)
    {
        if (all.Count == 0) throw new InputException(new Problem(_place, "it has no column that can be read", "write each column as one number, text or boolean a sample"));
        ColumnPlan.RefuseTooMany(all.Count, _place);
        var time = Time(all);
        var length = time.Index >= 0 ? all[time.Index].Length : all.GroupBy(column => column.Length).OrderByDescending(same => same.Count()).ThenByDescending(same => same.Key).First().Key;
        columns = [.. all.Where(column => column.Length == length)];
        foreach (var other in all.Where(column => column.Length != length))
            _table.LeaveOut(other.Name, FormattableString.Invariant($"has {other.Length} values, and the recording {length} samples"));
        foreach (var (name, why) in _table.LeftOut) _notes.Add($"'{name}' is left out: it {why}");
        var at = time.Index < 0 ? -1 : columns.ToList().IndexOf(all[time.Index]);
        return new Layout
        {
            Delimiter = ',',
            Decimal = '.',
            Names = [.. columns.Select(column => column.Name)],
            Units = [.. columns.Select(StatedUnit)],
            Time = at,
            TimeUnit = time.Unit,
            Offset = 0,
            LinesBefore = 0,
            SpacedQuotes = false,
            Found = new DialectFound(new Dialect { TimeColumn = at < 0 ? null : columns[at].Name, TimeUnit = time.Unit, Rate = _given.Rate }, null, 1, false, _notes),
        };
    }

    private (int Index, string? Unit) Time(IReadOnlyList<TableColumn> columns)
    {
        if (_given.Rate is not null) return (-1, null);
        var heads = columns.Select(Head).ToList();
        var samples = Enumerable.Range(0, heads.Max(head => head.Length)).Select(row => new HeadRow(0, row + 1, [.. heads.Select(head => row < head.Length ? head[row] : "")])).ToList();
        return new TimeColumnFinder(_place, _given, _notes).Find([.. columns.Select(column => column.Name)], [.. columns.Select(StatedUnit)], samples);
    }

    // Numbers are never date-times.
    private string[] Head(TableColumn column)
    {
        if (column.IsNumeric || column.Length == 0) return [];
        var count = _table.Blocks(column.Length).First();
        var values = Values(column, 0, 0, count);
        return [.. Enumerable.Range(0, Math.Min(HeadRows, count)).Select(row => CellProblems.Text(values.Text(row)))];
    }

    private Values Values(TableColumn column, int block, long from, int count)
    {
        try
        {
            return _table.Read(column, block, from, count);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            throw new InputException(new Problem(FormattableString.Invariant($"{_place}(rows {from + 1} to {from + count}, column '{column.Name}')"), $"its values are damaged, or cannot be read: {OneLine(e)}", WriteAgain));
        }
    }

    private static string? StatedUnit(TableColumn column) => column.Unit ?? HeaderText.Stated(column.Name);
}
