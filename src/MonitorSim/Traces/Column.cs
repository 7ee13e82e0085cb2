using System.Globalization;
using Fractions;
using MonitorSim.Channels;

namespace MonitorSim.Traces;

/// <summary>One recorded column of a <see cref="Trace"/>: either numbers or words.</summary>
public abstract class Column
{
    private protected Column(string name, string? unit) => (Name, Unit) = (name, unit);

    /// <summary>The column's header.</summary>
    public string Name { get; }

    /// <summary>The unit that the recording states for it (units row or header), if any. A plan's unit takes precedence.</summary>
    public string? Unit { get; }

    /// <summary>How many samples it has.</summary>
    public abstract int Count { get; }

    /// <summary>Whether the cell of that sample is empty.</summary>
    public abstract bool IsMissing(int sample);
}

/// <summary>A column of numbers, each the double nearest to its decimal text.</summary>
public sealed class NumberColumn : Column
{
    private readonly double[] _values;
    private readonly IReadOnlyDictionary<int, Fraction>? _beyondDouble;
    private Missing _missing;

    /// <param name="name">The column's header.</param>
    /// <param name="unit">The unit that the recording states, if any.</param>
    /// <param name="values">One value a sample; NaN where the cell is empty. The array is taken over, not copied.</param>
    /// <param name="beyondDouble">The exact values of those cells whose text the shortest decimal of their double does not
    /// give back (more than 15 digits); null where there are none.</param>
    public NumberColumn(string name, string? unit, double[] values, IReadOnlyDictionary<int, Fraction>? beyondDouble = null)
        : base(name, unit) => (_values, _beyondDouble) = (values, beyondDouble);

    /// <inheritdoc/>
    public override int Count => _values.Length;

    /// <summary>One value a sample; NaN where the cell is empty.</summary>
    public ReadOnlySpan<double> Values => _values;

    internal double[] Array => _values;

    /// <summary>Whether any cell is empty, found once.</summary>
    internal bool HasMissing
    {
        get
        {
            if (_missing == Missing.Unknown) _missing = Scan.FirstNotWithin(Values, double.NegativeInfinity, double.PositiveInfinity) < Count ? Missing.Some : Missing.None;
            return _missing == Missing.Some;
        }
    }

    /// <inheritdoc/>
    public override bool IsMissing(int sample) => double.IsNaN(_values[sample]);

    /// <summary>The value that the recording's decimal text stands for, without rounding. For columns built in C# it is the
    /// shortest decimal that reads back as the double: 10.3 means ten point three.</summary>
    public Fraction Exact(int sample) =>
        _beyondDouble is not null && _beyondDouble.TryGetValue(sample, out var exact) ? exact : ShortestDecimal(_values[sample]);

    private enum Missing : byte
    {
        Unknown,
        None,
        Some,
    }

    /// <summary>Whether no cell's text is another number than the shortest decimal of its double.</summary>
    internal bool IsShortest => _beyondDouble is not { Count: > 0 };

    /// <summary>Whether the shortest decimal of the cell's double is another number than the cell's text.</summary>
    internal bool IsBeyondDouble(int sample) => _beyondDouble?.ContainsKey(sample) == true;

    /// <summary>The value of the shortest decimal that reads back as this double.</summary>
    internal static Fraction ShortestDecimal(double value)
    {
        // Up to 15 digits a decimal survives the way through a double, so the shortest one is the one that was written.
        return Fraction.FromString(value.ToString("R", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}

/// <summary>A column of words (digital inputs, modes): each distinct word is kept once.</summary>
public sealed class WordColumn : Column
{
    private readonly int[] _codes;

    /// <param name="name">The column's header.</param>
    /// <param name="codes">One index into <paramref name="words"/> a sample, -1 where the cell is empty. Taken over, not copied.</param>
    /// <param name="words">The distinct words, as written.</param>
    public WordColumn(string name, int[] codes, IReadOnlyList<string> words) : base(name, null) => (_codes, Words) = (codes, words);

    /// <inheritdoc/>
    public override int Count => _codes.Length;

    /// <summary>The distinct words, as written.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>One index into <see cref="Words"/> a sample; -1 where the cell is empty.</summary>
    public ReadOnlySpan<int> Codes => _codes;

    /// <inheritdoc/>
    public override bool IsMissing(int sample) => _codes[sample] < 0;
}
