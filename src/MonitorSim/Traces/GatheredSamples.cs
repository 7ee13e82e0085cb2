namespace MonitorSim.Traces;

/// <summary>The samples of a recording while they come: their times, and the columns beside them. The same for every kind of file.</summary>
internal sealed class GatheredSamples : IDisposable
{
    private readonly Cells[] _columns;
    private readonly ProblemList _problems;
    private readonly TimeCells? _timeCells;
    private readonly RateClock? _clock;
    private readonly Blocks<long> _times = new();
    private long _timeBefore = -1;

    /// <param name="layout">Which column is the time.</param>
    /// <param name="columns">Those to fill.</param>
    /// <param name="problems">Where problems go.</param>
    /// <param name="isText">Whether the file is text, so that a plan may say how it is written.</param>
    public GatheredSamples(Layout layout, Cells[] columns, ProblemList problems, bool isText)
    {
        (_columns, _problems) = (columns, problems);
        if (layout.Time >= 0) _timeCells = new TimeCells(layout.TimeUnit!, (byte)layout.Decimal);
        else _clock = new RateClock(layout.Found.Dialect.Rate!.Value, problems.File);
        Problems = new CellProblems(problems, layout.Decimal, isText, layout.Time >= 0 ? layout.Names[layout.Time] : null, _timeCells);
    }

    /// <summary>How many are complete.</summary>
    public int Count { get; private set; }

    /// <summary>Says what is wrong with a cell.</summary>
    public CellProblems Problems { get; }

    /// <summary>Whether each sample brings its time.</summary>
    public bool HaveTimes => _timeCells is not null;

    /// <summary>Makes room for the next sample.</summary>
    /// <exception cref="InputException">There are more than a recording can have.</exception>
    public void Begin()
    {
        if (Count % Blocks<long>.Size == 0) OpenBlocks();
        if (_clock is not null) _times[Count] = _clock.Next();
    }

    /// <summary>Takes the time of the sample.</summary>
    /// <param name="cell">Its text.</param>
    /// <param name="wrong">What it turned out to be, where it is no time after the one before.</param>
    /// <returns>Whether it is.</returns>
    public bool TakeTime(ReadOnlySpan<byte> cell, out (CellText Found, long Time, long Before) wrong)
    {
        var found = _timeCells!.Read(cell, out var time);
        wrong = (found, time, _timeBefore);
        var isRight = found == CellText.Number && time > _timeBefore;
        _times[Count] = _timeBefore = found == CellText.Number ? time : _timeBefore;
        return isRight;
    }

    /// <summary>The sample is complete.</summary>
    public void End() => Count++;

    /// <summary>The trace of them all.</summary>
    /// <exception cref="InputException">There was any problem.</exception>
    public Trace ToTrace(string name, string sha256)
    {
        _problems.ThrowIfAny();
        return new Trace(name, _times.ToArray(Count), [.. _columns.Select(column => column.ToColumn(Count))], sha256);
    }

    public void Dispose()
    {
        _times.Dispose();
        foreach (var column in _columns) column.Dispose();
    }

    private void OpenBlocks()
    {
        if (Count > Array.MaxLength - Blocks<long>.Size)
            throw new InputException(new Problem(_problems.File, $"more than {Count} samples", "cut the recording into parts"));
        _times.Open();
        foreach (var column in _columns) column.Open();
    }
}
