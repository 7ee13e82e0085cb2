using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Channels;

/// <summary>A recorded column carried to SI and to the load side: raw · factor + offset.</summary>
internal sealed class RecordedChannel(Numbers raw, Fraction factor, Fraction offset) : Channel
{
    private readonly double _factor = ExactDouble.Nearest(factor);
    private readonly double _offset = ExactDouble.Nearest(offset);

    public override Presence At(int sample) => raw.IsMissing(sample) ? Presence.Missing : Presence.Present;

    public override double Value(int sample) => raw[sample] * _factor + _offset;

    // Raw value, factor, product, offset and sum are rounded once each: at most five units of the larger parts.
    public override double Error(int sample) =>
        (5 * Math.Abs(raw[sample] * _factor) + 3 * Math.Abs(_offset)) * Rounding.Unit + 4 * double.Epsilon;

    public override Fraction Exact(int sample) => raw.Exact(sample) * factor + offset;
}
