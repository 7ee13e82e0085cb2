namespace MonitorSim.Traces.Formats;

/// <summary>Puts the values of a binary recording, row by row, into columns.</summary>
/// <param name="layout">Which column is the time.</param>
/// <param name="columns">Those to fill.</param>
/// <param name="problems">Where problems go.</param>
internal sealed class BinaryRows(Layout layout, Cells[] columns, ProblemList problems) : IDisposable
{
    private readonly GatheredSamples _samples = new(layout, columns, problems, isText: false);

    /// <summary>Adds a block.</summary>
    /// <param name="read">Gives the values of a column, by its place in the file.</param>
    /// <param name="count">How many rows the block has.</param>
    public void Add(Func<int, Values> read, int count)
    {
        var times = _samples.HaveTimes ? read(layout.Time) : null;
        var values = Array.ConvertAll(columns, column => read(column.Index));
        for (var row = 0; row < count; row++)
        {
            _samples.Begin();
            if (times is not null && !_samples.TakeTime(times.Text(row), out var wrong)) _samples.Problems.Time(Row, times.Text(row), wrong);
            for (var i = 0; i < values.Length; i++) Put(columns[i], values[i], row);
            _samples.End();
        }
    }

    /// <summary>The trace that was read.</summary>
    /// <exception cref="InputException">There was any problem.</exception>
    public Trace ToTrace(string name, string sha256) => _samples.ToTrace(name, sha256);

    public void Dispose() => _samples.Dispose();

    // The present row of the file, from 1.
    private long Row => _samples.Count + 1L;

    private void Put(Cells column, Values values, int row)
    {
        var (sample, problems) = (_samples.Count, _samples.Problems);
        switch (column)
        {
            case NumberCells numbers:
                if (values is NumberValues<double> { AsDoubles: { } doubles } && numbers.TrySet(sample, doubles[row])) break;
                if (numbers.Set(sample, values.Text(row)) is var number and >= CellText.NotANumber) problems.Number(Row, values.Text(row), column.Name, number);
                break;
            case WordCells words:
                if (!words.Set(sample, values.Text(row))) problems.NotText(Row, values.Text(row), column.Name);
                break;
            case OpenCells open:
                var either = open.Set(sample, values.Text(row), out var isText);
                if (!isText) problems.NotText(Row, values.Text(row), column.Name);
                else if (either >= CellText.NotANumber) problems.Number(Row, values.Text(row), column.Name, either);
                break;
        }
    }
}
