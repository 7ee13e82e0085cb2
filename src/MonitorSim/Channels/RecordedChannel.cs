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

    public override Ranking? Ranking(bool magnitude)
    {
        if (!raw.AreShortest || (magnitude && !offset.IsZero)) return null;
        var ranking = new Ranking(raw, magnitude);
        return factor.IsPositive || magnitude ? ranking : ranking.Reversed();
    }

    public override int FirstOutside(double low, double high, int from, int until)
    {
        var (rawLow, rawHigh, margin) = InRaw(low, high);
        return from + Scan.FirstNotWithin(raw.Between(from, until), rawLow + margin, rawHigh - margin);
    }

    public override int FirstWithin(double low, double high, int from, int until)
    {
        var (rawLow, rawHigh, margin) = InRaw(low, high);
        return from + Scan.FirstNotBeyond(raw.Between(from, until), rawLow - margin, rawHigh + margin);
    }

    // The bounds carried back to the column, so that the column is scanned as it is.
    private (double Low, double High, double Margin) InRaw(double low, double high)
    {
        var (a, b) = ((low - _offset) / _factor, (high - _offset) / _factor);
        var margin = (MarginOf(low, high) + 1e-12 * Math.Abs(_offset)) / Math.Abs(_factor) + 64 * double.Epsilon;
        return _factor > 0 ? (a, b, margin) : (b, a, margin);
    }
}
