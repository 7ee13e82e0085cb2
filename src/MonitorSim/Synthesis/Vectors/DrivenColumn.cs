using System.Numerics;
using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>A column of numbers as it is written: raw values on a decimal grid.</summary>
internal sealed class DrivenColumn(string name, int digits)
{
    private readonly List<Fraction> _values = [];
    private readonly List<double> _doubles = [];

    public string Name { get; } = name;

    /// <summary>The distance between neighbouring values that can be written.</summary>
    public Fraction Grid { get; } = Fraction.Pow(10, -digits);

    public int Count => _values.Count;

    public Fraction this[int sample] => _values[sample];

    public double Double(int sample) => _doubles[sample];

    /// <summary>Writes the value of the newest sample, or another one in its place.</summary>
    public void Set(int sample, Fraction value)
    {
        if (sample > _values.Count) throw new ArgumentOutOfRangeException(nameof(sample), sample, "samples are written in order");
        if (sample == _values.Count)
        {
            _values.Add(value);
            _doubles.Add(0);
        }

        _values[sample] = value;
        _doubles[sample] = ExactDouble.Nearest(value);
    }

    /// <summary>The grid's value nearest to, at or below (-1), or at or above (+1) another.</summary>
    public Fraction Snap(Fraction value, int direction)
    {
        var steps = value / Grid;
        var floor = Floor(steps);
        if (steps == new Fraction(floor)) return floor * Grid;
        var up = direction > 0 || (direction == 0 && steps - floor >= new Fraction(1, 2));
        return (up ? floor + 1 : floor) * Grid;
    }

    /// <summary>The column as a replay reads it.</summary>
    public Channel AsChannel(ChannelScale scale) => new Driven(this, scale);

    private static BigInteger Floor(Fraction value)
    {
        var quotient = BigInteger.DivRem(value.Numerator, value.Denominator, out var remainder);
        return remainder.Sign < 0 ? quotient - 1 : quotient;
    }

    /// <summary>The same numbers as <see cref="RecordedChannel"/> gives, of values that may still change.</summary>
    private sealed class Driven(DrivenColumn column, ChannelScale scale) : Channel
    {
        private readonly double _factor = ExactDouble.Nearest(scale.Factor), _offset = ExactDouble.Nearest(scale.Offset);

        public override Presence At(int sample) => Presence.Present;

        public override double Value(int sample) => column.Double(sample) * _factor + _offset;

        public override double Error(int sample) => 0;

        public override Fraction Exact(int sample) => scale.ToSi(column[sample]);
    }
}
