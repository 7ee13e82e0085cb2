using System.Buffers;
using System.Globalization;
using System.Text;
using MonitorSim.Quantities;

namespace MonitorSim.Traces;

/// <summary>Writes recordings as text that <see cref="TraceReader"/> gives back as the same recording: UTF-8, lines that end with a line feed, and
/// every number with just as many digits as it takes to read it back. The same bytes everywhere.</summary>
public static class TraceWriter
{
    private static readonly SearchValues<char> NeedQuotes = SearchValues.Create("\"\r\n");

    /// <summary>Writes a recording. What the dialect leaves open: cells separated by commas (semicolons where the decimal mark is a comma), a decimal
    /// point, a column <c>time</c> in seconds, and a row of units where a column has one.</summary>
    /// <param name="trace">The recording.</param>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="dialect">How; with a rate there is no time column, lines to skip are written as comments.</param>
    /// <exception cref="InputException">A dialect that cannot be written: another encoding than UTF-8, date-times, a delimiter that is the decimal mark; or a name, unit or word that a
    /// spreadsheet would take for a formula.</exception>
    public static void Write(Trace trace, Stream stream, Dialect? dialect = null)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(stream);
        dialect ??= new();
        var mark = dialect.Decimal ?? '.';
        var delimiter = dialect.Delimiter ?? (mark == ',' ? ';' : ',');
        var power = PowerOfTime(trace, dialect, delimiter, mark);
        using var text = new StreamWriter(stream, new UTF8Encoding(false), 1 << 16, leaveOpen: true) { NewLine = "\n" };
        for (var line = 0; line < dialect.SkipRows; line++) text.WriteLine(line == 0 ? Quoted("# " + trace.Name.ReplaceLineEndings(" "), delimiter) : "# ");
        Heads(trace, dialect, delimiter, text);
        var cells = trace.Columns.Select(column => Cells(trace.Name, column, delimiter, mark)).ToArray();
        for (var k = 0; k < trace.Count; k++)
        {
            if (dialect.Rate is null) text.Write(Time(trace.Times[k], power, mark));
            for (var i = 0; i < cells.Length; i++)
            {
                if (i > 0 || dialect.Rate is null) text.Write(delimiter);
                text.Write(cells[i](k));
            }

            text.WriteLine();
        }
    }

    private static int PowerOfTime(Trace trace, Dialect dialect, char delimiter, char mark)
    {
        if (delimiter == mark) throw new InputException(new Problem(trace.Name, $"'{mark}' would be delimiter and decimal mark", "write two different characters"));
        if (dialect.Encoding is { } encoding && !encoding.Replace("-", "", StringComparison.Ordinal).Equals("utf8", StringComparison.OrdinalIgnoreCase))
            throw new InputException(new Problem(trace.Name, $"recordings are not written as '{encoding}'", "write utf-8"));
        return TimeUnits.PowerToNanoseconds(dialect.TimeUnit ?? "s")
            ?? throw new InputException(new Problem(trace.Name, $"recordings are not written with times in '{dialect.TimeUnit}'", "write s, ms, µs or ns"));
    }

    private static void Heads(Trace trace, Dialect dialect, char delimiter, StreamWriter text)
    {
        List<string> names = [.. trace.Columns.Select(column => column.Name)], units = [.. trace.Columns.Select(column => column.Unit ?? "")];
        var hasUnits = dialect.UnitsRow ?? units.Exists(unit => unit.Length > 0);
        if (dialect.Rate is null)
        {
            names.Insert(0, dialect.TimeColumn ?? "time");
            units.Insert(0, dialect.TimeUnit ?? "s");
        }

        foreach (var name in names) FormulaText.Refuse(trace.Name, "column", name);
        foreach (var unit in units) FormulaText.Refuse(trace.Name, "unit", unit);
        text.WriteLine(string.Join(delimiter, names.Select(name => Quoted(name, delimiter))));
        if (hasUnits) text.WriteLine(string.Join(delimiter, units.Select(unit => Quoted(unit, delimiter))));
    }

    private static Func<int, string> Cells(string trace, Column column, char delimiter, char mark)
    {
        if (column is NumberColumn numbers) return k => numbers.IsMissing(k) ? "" : Marked(Number(numbers, k), mark);
        var words = (WordColumn)column;
        foreach (var word in words.Words) FormulaText.Refuse($"{trace}(column '{column.Name}')", "word", word);
        var quoted = words.Words.Select(word => Quoted(word, delimiter)).ToArray();
        return k => words.IsMissing(k) ? "" : quoted[words.Codes[k]];
    }

    private static string Number(NumberColumn column, int sample)
    {
        if (column.IsBeyondDouble(sample)) return NumberText.Exact(column.Exact(sample));
        var shortest = column.Values[sample].ToString("R", CultureInfo.InvariantCulture);
        return shortest.Contains('E', StringComparison.Ordinal) ? NumberText.Exact(column.Exact(sample)) : shortest;
    }

    private static string Time(long nanoseconds, int power, char mark)
    {
        var unit = 1L;
        for (var i = 0; i < power; i++) unit *= 10;
        var whole = (nanoseconds / unit).ToString(CultureInfo.InvariantCulture);
        var rest = nanoseconds % unit;
        return rest == 0 ? whole : whole + mark + rest.ToString(CultureInfo.InvariantCulture).PadLeft(power, '0').TrimEnd('0');
    }

    private static string Marked(string number, char mark) => mark == '.' ? number : number.Replace('.', mark);

    private static string Quoted(string cell, char delimiter) =>
        cell.Contains(delimiter, StringComparison.Ordinal) || cell.AsSpan().ContainsAny(NeedQuotes) ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;
}
