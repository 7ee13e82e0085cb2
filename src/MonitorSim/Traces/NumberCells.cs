namespace MonitorSim.Traces;

/// <summary>A column of numbers while it is being read.</summary>
internal sealed class NumberCells(int index, string name, string? unit, byte mark) : Cells(index, name, unit)
{
    private readonly Blocks<double> _values = new();
    private ExactReadings? _beyond;

    public override void Open() => _values.Open();

    /// <summary>Reads a cell into a sample's place.</summary>
    public CellText Set(int sample, ReadOnlySpan<byte> cell) =>
        DecimalText.TryFast(cell, mark, out _values[sample]) ? CellText.Number : SetSlowly(sample, cell);

    /// <summary>Takes a double as what its shortest decimal says. False where it is infinite, which no text of a number is.</summary>
    public bool TrySet(int sample, double value)
    {
        _values[sample] = value;
        return !double.IsInfinity(value);
    }

    private CellText SetSlowly(int sample, ReadOnlySpan<byte> cell)
    {
        var text = DecimalText.Read(cell, mark, out _values[sample], out var beyond);
        if (beyond is { } exact) (_beyond ??= new()).Add(sample, exact);
        return text;
    }

    public override Column ToColumn(int count) => new NumberColumn(Name, Unit, _values.ToArray(count), _beyond);

    public override void Dispose() => _values.Dispose();
}
