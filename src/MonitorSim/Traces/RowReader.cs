using CsvHelper;

namespace MonitorSim.Traces;

/// <summary>Reads the samples, row by row, into columns.</summary>
internal sealed class RowReader : IDisposable
{
    private readonly Layout _layout;
    private readonly ProblemList _problems;
    private readonly GatheredSamples _samples;
    private readonly NumberCells[] _numbers;
    private readonly WordCells[] _words;
    private readonly OpenCells[] _open;

    // A row of another length is truncated if nothing follows it, else ragged: known one row later.
    private (long Line, int Cells)? _oddRow;

    // The last cell of a row that could not be read: where the file then ends without a line end, it was cut off there.
    private (int Sample, long Line, string Cell)? _unreadableEnd;

    public RowReader(Layout layout, Cells[] columns, ProblemList problems)
    {
        (_layout, _problems, _samples) = (layout, problems, new(layout, columns, problems, isText: true));
        _numbers = [.. columns.OfType<NumberCells>()];
        _words = [.. columns.OfType<WordCells>()];
        _open = [.. columns.OfType<OpenCells>()];
    }

    /// <summary>Reads everything.</summary>
    /// <param name="text">UTF-8, from the first sample on.</param>
    public void Read(HeadStream text)
    {
        var options = HeadRows.Options(_layout.Delimiter, new() { BufferSize = 256 << 10, OnMalformedRecord = Malformed, TrimWhitespace = _layout.SpacedQuotes });
        using var reader = CsvReader.Create(text, options, leaveOpen: true);
        var cells = _layout.Names.Length;
        try
        {
            while (reader.Read())
            {
                if (reader.FieldCount != cells)
                {
                    OddRow(reader);
                    continue;
                }

                if (_oddRow is not null) Ragged();
                _samples.Begin();
                Row(reader);
                _samples.End();
            }
        }
        catch (CsvFormatException tooLong)
        {
            _problems.Add(ProblemKind.Quoting, _layout.LinesBefore + tooLong.LineNumber, null, () =>
                ("a row goes on for more than 16 MB", "an opening quote is never closed there, or the file is no text"));
        }

        End(text.Last is (byte)'\n' or (byte)'\r');
    }

    /// <summary>The trace that was read.</summary>
    /// <exception cref="InputException">There was any problem.</exception>
    public Trace ToTrace(string name, string sha256) => _samples.ToTrace(name, sha256);

    public void Dispose() => _samples.Dispose();

    private void Row(CsvReader reader)
    {
        var sample = _samples.Count;
        if (_samples.HaveTimes && !_samples.TakeTime(reader.GetSpan(_layout.Time), out var wrong))
            _samples.Problems.Time(LineOf(reader), reader.GetSpan(_layout.Time), wrong);
        foreach (var column in _numbers)
        {
            var found = column.Set(sample, reader.GetSpan(column.Index));
            if (found >= CellText.NotANumber) Unreadable(reader, column, found);
        }

        foreach (var column in _words)
        {
            if (!column.Set(sample, reader.GetSpan(column.Index))) NotText(reader, column);
        }

        foreach (var column in _open)
        {
            var found = column.Set(sample, reader.GetSpan(column.Index), out var isText);
            if (!isText) NotText(reader, column);
            else if (found >= CellText.NotANumber) Unreadable(reader, column, found);
        }
    }

    private void Unreadable(CsvReader reader, Cells column, CellText found)
    {
        var cell = reader.GetSpan(column.Index);
        if (found != CellText.OutOfRange && column.Index == _layout.Names.Length - 1) _unreadableEnd = (_samples.Count, LineOf(reader), CellProblems.Text(cell));
        _samples.Problems.Number(LineOf(reader), cell, column.Name, found);
    }

    private void NotText(CsvReader reader, Cells column) => _samples.Problems.NotText(LineOf(reader), reader.GetSpan(column.Index), column.Name);

    private void OddRow(CsvReader reader)
    {
        if (_oddRow is not null) Ragged();
        _oddRow = (LineOf(reader), reader.FieldCount);
    }

    private void Ragged()
    {
        var (line, cells) = _oddRow!.Value;
        _oddRow = null;
        _problems.Add(ProblemKind.RaggedRow, line, null, () =>
            ($"{Count(cells)} where the first row has {_layout.Names.Length}",
                "give every row as many cells as the first; put cells that hold the separator in quotes"));
    }

    private void End(bool lineEnded)
    {
        if (_oddRow is { } odd)
        {
            if (odd.Cells < _layout.Names.Length)
            {
                _problems.Add(ProblemKind.TruncatedRow, odd.Line, null, () =>
                    ($"the last row is cut off: {Count(odd.Cells)} of {_layout.Names.Length}{(lineEnded ? "" : ", and no line end")}",
                        "record it again, or remove that row"));
            }
            else
            {
                Ragged();
            }
        }

        if (!lineEnded && _unreadableEnd is { } end && end.Sample == _samples.Count - 1)
        {
            _problems.Add(ProblemKind.TruncatedRow, end.Line, null, () =>
                ($"the last row seems cut off: it has no line end, and its last cell is '{CellProblems.Shortened(end.Cell)}'", "record it again, or remove that row"));
        }

        if (_samples.Count == 0 && !_problems.Any)
            throw new InputException(new Problem(_problems.File, "there is a header, but no sample below it", "a recording has at least one sample"));
    }

    private void Malformed(CsvMalformedRecord record)
    {
        // A quote in the middle of a cell is just a character; numbers complain about it by themselves.
        var line = _layout.LinesBefore + record.LineNumber;
        if (record.Reason == CsvMalformedReason.TextAfterClosingQuote)
        {
            _problems.Add(ProblemKind.Quoting, line, null, () => ("text follows the closing quote of a cell", "double quotes inside a quoted cell"));
        }
        else if (record.Reason == CsvMalformedReason.UnterminatedQuote)
        {
            _problems.Add(ProblemKind.Quoting, line, null, () =>
                ("a quoted cell is still open where the file ends", "the file is cut off, or the quote's end is missing"));
        }
    }

    private long LineOf(CsvReader reader) => _layout.LinesBefore + reader.LineNumber;

    private static string Count(int cells) => cells == 1 ? "1 cell" : $"{cells} cells";
}
