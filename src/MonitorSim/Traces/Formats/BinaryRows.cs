namespace MonitorSim.Traces.Formats;

/// <summary>Puts the values of a binary recording, row by row, into columns.</summary>
internal sealed class BinaryRows : IDisposable
{
    private readonly Layout _layout;
    private readonly Cells[] _columns;
    private readonly ProblemList _problems;
    private readonly CellProblems _cells;
    private readonly TimeCells? _timeCells;
    private readonly RateClock? _clock;
    private readonly Blocks<long> _times = new();
    private long _timeBefore = -1;
    private int _count;

    /// <param name="layout">Which column is the time.</param>
    /// <param name="columns">Those to fill.</param>
    /// <param name="problems">Where problems go.</param>
    public BinaryRows(Layout layout, Cells[] columns, ProblemList problems)
    {
        (_layout, _columns, _problems) = (layout, columns, problems);
        if (layout.Time >= 0) _timeCells = new TimeCells(layout.TimeUnit!, (byte)layout.Decimal);
        else _clock = new RateClock(layout.Found.Dialect.Rate!.Value, problems.File);
        _cells = new CellProblems(problems, layout.Decimal, layout.Time >= 0 ? layout.Names[layout.Time] : null, _timeCells);
    }

    /// <summary>Adds a block.</summary>
    /// <param name="read">Gives the values of a column, by its place in the file.</param>
    /// <param name="count">How many rows the block has.</param>
    public void Add(Func<int, Values> read, int count)
    {
        var times = _timeCells is null ? null : read(_layout.Time);
        var values = Array.ConvertAll(_columns, column => read(column.Index));
        for (var row = 0; row < count; row++, _count++)
        {
            if (_count % Blocks<long>.Size == 0) OpenBlocks();
            Time(times, row);
            for (var i = 0; i < values.Length; i++) Put(_columns[i], values[i], row);
        }
    }

    /// <summary>The trace that was read.</summary>
    /// <exception cref="InputException">There was any problem.</exception>
    public Trace ToTrace(string name, string sha256)
    {
        _problems.ThrowIfAny();
        return new Trace(name, _times.ToArray(_count), [.. _columns.Select(column => column.ToColumn(_count))], sha256);
    }

    public void Dispose()
    {
        _times.Dispose();
        foreach (var column in _columns) column.Dispose();
    }

    private void OpenBlocks()
    {
        _times.Open();
        foreach (var column in _columns) column.Open();
    }

    private void Time(Values? times, int row)
    {
        if (times is null)
        {
            _times[_count] = _clock!.Next();
            return;
        }

        var text = times.Text(row);
        var found = _timeCells!.Read(text, out var time);
        var before = _timeBefore;
        if (found != CellText.Number || time <= before) _cells.Time(_count + 1L, text, found, time, before);
        _times[_count] = _timeBefore = found == CellText.Number ? time : before;
    }

    private void Put(Cells column, Values values, int row)
    {
        switch (column)
        {
            case NumberCells numbers:
                if (values is NumberValues<double> { AsDoubles: { } doubles } && numbers.TrySet(_count, doubles[row])) break;
                if (numbers.Set(_count, values.Text(row)) is var number and >= CellText.NotANumber) _cells.Number(_count + 1L, values.Text(row), column.Name, number);
                break;
            case WordCells words:
                if (!words.Set(_count, values.Text(row))) _cells.NotText(_count + 1L, values.Text(row), column.Name);
                break;
            case OpenCells open:
                var either = open.Set(_count, values.Text(row), out var isText);
                if (!isText) _cells.NotText(_count + 1L, values.Text(row), column.Name);
                else if (either >= CellText.NotANumber) _cells.Number(_count + 1L, values.Text(row), column.Name, either);
                break;
        }
    }
}
