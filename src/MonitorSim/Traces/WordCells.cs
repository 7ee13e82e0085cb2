using System.Text;

namespace MonitorSim.Traces;

/// <summary>A column of words while it is being read.</summary>
internal sealed class WordCells(int index, string name, string? unit) : Cells(index, name, unit)
{
    private readonly List<string> _words = [];
    private readonly List<byte[]> _bytes = [];
    private readonly Dictionary<string, int> _codeOf = new(StringComparer.Ordinal);
    private readonly Blocks<int> _codes = new();
    private int _last = -1;

    /// <summary>How many distinct words there are.</summary>
    public int Distinct => _words.Count;

    public override void Open() => _codes.Open();

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

    public override Column ToColumn(int count) => new WordColumn(Name, _codes.ToArray(count), _words);

    public override void Dispose() => _codes.Dispose();
}
