using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Channels;

/// <summary>The raw numbers of one column. Missing cells may be held.</summary>
internal sealed class Numbers : Samples<double>
{
    private readonly Dictionary<int, Fraction>? _exact;
    private readonly NumberColumn? _column;

    /// <summary>None yet.</summary>
    public Numbers() { }

    /// <summary>Wraps a whole column without copying it, unless missing cells are to be held.</summary>
    public Numbers(NumberColumn column, bool hold) : base(hold && column.HasMissing ? WithHeld(column) : column.Array)
    {
        _column = column;
        if (!hold || !column.HasMissing) return;
        _exact = [];
        for (var k = 1; k < Count; k++)
            if (column.IsMissing(k) && !IsMissing(k)) _exact[k] = Exact(k - 1);
    }

    public bool IsMissing(int sample) => double.IsNaN(this[sample]);

    /// <summary>Whether each exact number is the shortest decimal of its double, so that doubles and exact numbers have one order.</summary>
    public bool AreShortest => _exact is not { Count: > 0 } && _column?.IsShortest != false;

    public Fraction Exact(int sample) =>
        _exact is not null && _exact.TryGetValue(sample, out var exact) ? exact
        : _column is not null ? _column.Exact(sample)
        : NumberColumn.ShortestDecimal(this[sample]);

    /// <summary>Adds the value of the next sample; NaN where it is missing.</summary>
    public void Append(double value, bool hold) => Append(hold && double.IsNaN(value) && Count > 0 ? this[Count - 1] : value);

    private static double[] WithHeld(NumberColumn column)
    {
        var values = column.Values.ToArray();
        for (var k = 1; k < values.Length; k++)
            if (double.IsNaN(values[k])) values[k] = values[k - 1];
        return values;
    }
}
