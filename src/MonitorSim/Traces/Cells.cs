using System.Text;
using Fractions;

namespace MonitorSim.Traces;

/// <summary>A column while it is being read.</summary>
internal abstract class Cells(int index, string name, string? unit)
{
    /// <summary>Its place in the row.</summary>
    public int Index { get; } = index;
    public string Name { get; } = name;
    public string? Unit { get; } = unit;

    /// <summary>Makes room for as many samples.</summary>
    public abstract void Grow(int capacity);

    /// <summary>The finished column of that many samples.</summary>
    public abstract Column ToColumn(int count);
}

/// <summary>A column of numbers while it is being read.</summary>
internal sealed class NumberCells(int index, string name, string? unit, byte mark) : Cells(index, name, unit)
{
    private double[] _values = [];
    private Dictionary<int, Fraction>? _beyond;

    public override void Grow(int capacity) => Room.Grow(ref _values, capacity);

    /// <summary>Reads a cell into a sample's place.</summary>
    public CellText Set(int sample, ReadOnlySpan<byte> cell) =>
        DecimalText.TryFast(cell, mark, out _values[sample]) ? CellText.Number : SetSlowly(sample, cell);

    private CellText SetSlowly(int sample, ReadOnlySpan<byte> cell)
    {
        var text = DecimalText.Read(cell, mark, out _values[sample], out var beyond);
        if (beyond is { } exact) (_beyond ??= [])[sample] = exact.ToFraction();
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

/// <summary>A column of words while it is being read.</summary>
internal sealed class WordCells(int index, string name, string? unit) : Cells(index, name, unit)
{
    private readonly List<string> _words = [];
    private readonly List<byte[]> _bytes = [];
    private readonly Dictionary<string, int> _codeOf = new(StringComparer.Ordinal);
    private int[] _codes = [];
    private int _last = -1;

    /// <summary>How many distinct words there are.</summary>
    public int Distinct => _words.Count;

    public override void Grow(int capacity) => Room.Grow(ref _codes, capacity);

    /// <summary>Reads a cell into a sample's place. False where it is no text in UTF-8.</summary>
    public bool Set(int sample, ReadOnlySpan<byte> cell)
    {
        // Digital inputs mostly stay what they were.
        if (_last >= 0 && cell.SequenceEqual(_bytes[_last]))
        {
            _codes[sample] = _last;
            return true;
        }

        cell = DecimalText.Trim(cell);
        if (DecimalText.IsMissing(cell))
        {
            _codes[sample] = -1;
            return true;
        }

        for (var code = 0; code < Math.Min(_bytes.Count, 8); code++)
        {
            if (!cell.SequenceEqual(_bytes[code])) continue;
            _codes[sample] = _last = code;
            return true;
        }

        if (!System.Text.Unicode.Utf8.IsValid(cell)) return false;
        var word = Encoding.UTF8.GetString(cell);
        if (!_codeOf.TryGetValue(word, out var known))
        {
            known = _words.Count;
            _codeOf.Add(word, known);
            _words.Add(word);
            _bytes.Add(cell.ToArray());
        }

        _codes[sample] = _last = known;
        return true;
    }

    public override Column ToColumn(int count)
    {
        Room.Trim(ref _codes, count);
        var codes = _codes;
        _codes = [];
        return new WordColumn(Name, codes, count, _words);
    }
}

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

    public override void Grow(int capacity)
    {
        if (!_isWords) _numbers.Grow(capacity);
        if (!_isNumbers) _words.Grow(capacity);
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
            _numbers.Grow(0);
            return CellText.Number;
        }

        if (_words.Distinct > ManyDistinct)
        {
            _isNumbers = true;
            _words.Grow(0);
        }

        return number;
    }

    public override Column ToColumn(int count) => _isWords ? _words.ToColumn(count) : _numbers.ToColumn(count);
}
