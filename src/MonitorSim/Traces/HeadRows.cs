using CsvHelper;

namespace MonitorSim.Traces;

/// <summary>One of a recording's first rows.</summary>
/// <param name="Offset">Where it begins, in bytes from where the head begins.</param>
/// <param name="Line">Its line in the file, counted from 1.</param>
/// <param name="Cells">Its cells, trimmed.</param>
internal sealed record HeadRow(int Offset, long Line, string[] Cells)
{
    /// <summary>Whether it begins as comments do.</summary>
    public bool IsComment => Cells[0].StartsWith('#') || Cells[0].StartsWith('%') || Cells[0].StartsWith("//", StringComparison.Ordinal);
}

/// <summary>The first rows of a recording, cut as the reader proper will cut them.</summary>
internal static class HeadRows
{
    private const int MostRows = 400;

    /// <summary>Cuts the head at the separator.</summary>
    /// <param name="head">UTF-8 text.</param>
    /// <param name="whole">Whether that is the whole file; else the last row may be cut and is left out.</param>
    /// <param name="separator">An ASCII character.</param>
    /// <param name="linesBefore">Lines of the file before the head.</param>
    public static List<HeadRow> Cut(ReadOnlyMemory<byte> head, bool whole, char separator, long linesBefore)
    {
        using var reader = CsvReader.Create(head, Options(separator, new() { TrimWhitespace = true }));
        var rows = new List<HeadRow>();
        while (rows.Count < MostRows && reader.Read())
        {
            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++) cells[i] = reader.GetString(i).Trim();
            rows.Add(new HeadRow((int)reader.ByteOffset, reader.LineNumber + linesBefore, cells));
        }

        if (!whole && rows.Count is > 1 and < MostRows) rows.RemoveAt(rows.Count - 1);
        return rows;
    }

    /// <summary>Options that reader and head share.</summary>
    public static CsvReaderOptions Options(char separator, CsvReaderOptions basis) => basis with
    {
        Separator = separator,
        HasHeader = false,
        DetectSeparatorHint = false,
        TrackLineNumbers = true,
        SkipEmptyLines = true,
        MaxRecordSize = 16 << 20,
    };

    /// <summary>The number of cells that most of the rows have, and how many rows have it. Rows of one cell count only where
    /// there are no others.</summary>
    public static (int Cells, int Rows) Usual(IReadOnlyList<HeadRow> rows)
    {
        var usual = rows.GroupBy(r => r.Cells.Length).OrderByDescending(g => g.Key > 1).ThenByDescending(g => g.Count())
            .ThenByDescending(g => g.Key).FirstOrDefault();
        return usual is null ? (0, 0) : (usual.Key, usual.Count());
    }
}
