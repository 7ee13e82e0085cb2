namespace MonitorSim.Traces;

/// <summary>A column of which nobody said what it is: numbers where every cell that is not empty is one, else words. While few
/// distinct cells were seen, both are kept; a column of many different numbers counts as one of numbers from then on.</summary>
internal sealed class OpenCells(int index, string name, string? unit, byte mark) : Cells(index, name, unit)
{
    /// <summary>More different numbers than a mode or a digital input has.</summary>
    private const int ManyDistinct = 256;
    private readonly NumberCells _numbers = new(index, name, unit, mark);
    private readonly WordCells _words = new(index, name, unit);
    private bool _isWords;
    private bool _isNumbers;

    public override void Open()
    {
        if (!_isWords) _numbers.Open();
        if (!_isNumbers) _words.Open();
    }

    /// <summary>Reads a cell into a sample's place.</summary>
    public CellText Set(int sample, ReadOnlySpan<byte> cell, out bool isText)
    {
        isText = true;
        if (_isNumbers) return _numbers.Set(sample, cell);
        isText = _words.Set(sample, cell);
        if (_isWords) return CellText.Number;
        var number = _numbers.Set(sample, cell);
        if (number is CellText.NotANumber)
        {
            _isWords = true;
            _numbers.Dispose();
            return CellText.Number;
        }

        if (_words.Distinct > ManyDistinct)
        {
            _isNumbers = true;
            _words.Dispose();
        }

        return number;
    }

    public override Column ToColumn(int count) => _isWords ? _words.ToColumn(count) : _numbers.ToColumn(count);

    public override void Dispose()
    {
        _numbers.Dispose();
        _words.Dispose();
    }
}
