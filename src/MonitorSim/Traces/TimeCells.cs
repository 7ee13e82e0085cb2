namespace MonitorSim.Traces;

/// <summary>The times of the samples, from the cells of the time column: exact differences from the first one, rounded once.</summary>
internal sealed class TimeCells
{
    private static readonly long[] Powers =
    [
        1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000,
    ];

    // Half of what 64 bits hold, so that the difference of two still fits.
    private static readonly ulong[] Largest = [.. Powers.Select(p => (ulong)(long.MaxValue / 2 / p))];

    private readonly int _power;
    private readonly bool _iso;
    private readonly byte _mark;
    private ExactTime? _first;
    private long? _firstWhole;

    /// <param name="unit">A unit that <see cref="TimeUnits"/> knows.</param>
    /// <param name="mark">The decimal mark.</param>
    public TimeCells(string unit, byte mark)
    {
        _iso = TimeUnits.IsIso(unit);
        _power = _iso ? 9 : TimeUnits.PowerToNanoseconds(unit) ?? throw new ArgumentException(unit, nameof(unit));
        _mark = mark;
    }

    /// <summary>What a cell of this column has to be.</summary>
    public string Expected => _iso ? "write a date-time such as 2024-03-01T12:30:00.250" : "write a number, such as 0" + (char)_mark + "125";

    /// <summary>Reads a cell: nanoseconds since the first one that was read.</summary>
    public CellText Read(ReadOnlySpan<byte> cell, out long nanoseconds)
    {
        // Times without parts of a nanosecond need whole numbers only.
        if (!_iso && DecimalText.TryDigits(cell, _mark, out var negative, out var digits, out var fraction)
            && fraction <= _power && digits <= Largest[_power - fraction])
        {
            var whole = (long)digits * Powers[_power - fraction];
            if (negative) whole = -whole;
            if (_firstWhole is { } firstWhole)
            {
                nanoseconds = whole - firstWhole;
                return CellText.Number;
            }

            if (_first is null)
            {
                _firstWhole = whole;
                _first = new ExactTime((Int128)whole * ExactTime.AttoPerNanosecond, null);
                nanoseconds = 0;
                return CellText.Number;
            }
        }

        return ReadSlowly(DecimalText.Trim(cell), out nanoseconds);
    }

    private CellText ReadSlowly(ReadOnlySpan<byte> cell, out long nanoseconds)
    {
        nanoseconds = 0;
        if (DecimalText.IsMissing(cell)) return CellText.Missing;
        ExactTime time;
        if (_iso)
        {
            if (IsoDateTime.Parse(cell) is not { } moment) return CellText.NotANumber;
            time = moment;
        }
        else
        {
            if (ExactDecimal.Parse(cell, _mark) is not { } number) return CellText.NotANumber;
            // 292 years is what 64 bits hold; a difference of two such times could still be small, but nobody's clock does that.
            if (number.Magnitude + _power > 28 || number.Exponent < -2000) return CellText.OutOfRange;
            time = ExactTime.Of(number, _power);
        }

        _first ??= time;
        if (time.NanosecondsSince(_first.Value) is not { } since) return CellText.OutOfRange;
        nanoseconds = since;
        return CellText.Number;
    }
}
