using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Channels;

/// <summary>The raw numbers of one column, whole or growing sample by sample. Missing cells may be held.</summary>
internal sealed class Numbers
{
    private double[] _values;
    private Dictionary<int, Fraction>? _exact;
    private readonly NumberColumn? _column;

    public Numbers() => _values = new double[64];

    /// <summary>Wraps a whole column without copying it, unless missing cells are to be held.</summary>
    public Numbers(NumberColumn column, bool hold)
    {
        Count = column.Count;
        _column = column;
        if (!hold || !column.HasMissing)
        {
            _values = column.Array;
            return;
        }

        _values = column.Values.ToArray();
        _exact = [];
        for (var k = 1; k < _values.Length; k++)
        {
            if (!double.IsNaN(_values[k])) continue;
            _values[k] = _values[k - 1];
            if (!double.IsNaN(_values[k])) _exact[k] = Exact(k - 1);
        }
    }

    public int Count { get; private set; }

    public double this[int sample] => _values[sample];

    public ReadOnlySpan<double> Span => _values.AsSpan(0, Count);

    public bool IsMissing(int sample) => double.IsNaN(_values[sample]);

    /// <summary>Whether each exact number is the shortest decimal of its double, so that doubles and exact numbers have one order.</summary>
    public bool AreShortest => _exact is not { Count: > 0 } && _column?.IsShortest != false;

    public Fraction Exact(int sample) =>
        _exact is not null && _exact.TryGetValue(sample, out var exact) ? exact
        : _column is not null ? _column.Exact(sample)
        : NumberColumn.ShortestDecimal(_values[sample]);

    /// <summary>Adds the value of the next sample; NaN where it is missing.</summary>
    public void Append(double value, bool hold)
    {
        if (Count == _values.Length) Array.Resize(ref _values, 2 * Count);
        _values[Count] = hold && double.IsNaN(value) && Count > 0 ? _values[Count - 1] : value;
        Count++;
    }
}
