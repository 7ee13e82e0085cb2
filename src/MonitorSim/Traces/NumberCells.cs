namespace MonitorSim.Traces;

/// <summary>A column of numbers while it is being read.</summary>
internal sealed class NumberCells(int index, string name, string? unit, byte mark) : Cells(index, name, unit)
{
    private double[] _values = [];
    private ExactReadings? _beyond;

    public override void Grow(int capacity) => Room.Grow(ref _values, capacity);

    /// <summary>Reads a cell into a sample's place.</summary>
    public CellText Set(int sample, ReadOnlySpan<byte> cell) =>
        DecimalText.TryFast(cell, mark, out _values[sample]) ? CellText.Number : SetSlowly(sample, cell);

    private CellText SetSlowly(int sample, ReadOnlySpan<byte> cell)
    {
        var text = DecimalText.Read(cell, mark, out _values[sample], out var beyond);
        if (beyond is { } exact) (_beyond ??= new()).Add(sample, exact);
        return text;
    }

    public override Column ToColumn(int count)
    {
        Room.Trim(ref _values, count);
        var values = _values;
        _values = [];
        return new NumberColumn(Name, Unit, values, count, _beyond);
    }
}
