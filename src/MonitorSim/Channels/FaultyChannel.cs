using Fractions;
using MonitorSim.Motion.Faults;
using MonitorSim.Quantities;

namespace MonitorSim.Channels;

/// <summary>A channel with a fault from a moment on: before it and after it as it is, in between spoiled doubles that compare as they are.</summary>
/// <param name="source">The channel without it.</param>
/// <param name="times">Of the samples.</param>
/// <param name="fault">The fault.</param>
/// <param name="holdsMissing">Whether a value that the fault takes away stays what it was before.</param>
internal sealed class FaultyChannel(Channel source, SampleTimes times, ChannelFault fault, bool holdsMissing) : Channel
{
    private readonly long _from = fault.From?.Nanoseconds ?? 0;
    private readonly long _until = fault.Until?.Nanoseconds ?? long.MaxValue;
    private int _first = -1;

    public override Presence At(int sample)
    {
        if (!IsSpoiled(sample)) return source.At(sample);
        return double.IsNaN(Spoiled(sample)) ? Presence.Missing : Presence.Present;
    }

    public override double Value(int sample) => IsSpoiled(sample) ? Spoiled(sample) : source.Value(sample);

    public override double Error(int sample) => IsSpoiled(sample) ? 0 : source.Error(sample);

    public override Fraction Exact(int sample) => IsSpoiled(sample) ? ExactDouble.Of(Spoiled(sample)) : source.Exact(sample);

    private bool IsSpoiled(int sample) => times[sample] >= _from && times[sample] < _until;

    // The fault may need to know how it began, and nothing else of what was before.
    private double Spoiled(int sample)
    {
        if (_first < 0)
            for (_first = 0; times[_first] < _from;) _first++;
        ReadOnlySpan<long> at = [times[_first], times[sample]];
        Span<double> values = [ValueOf(_first), ValueOf(sample)];
        if (_first == sample) fault.Apply(at[1..], values[1..]);
        else fault.Apply(at, values);
        return double.IsNaN(values[1]) && holdsMissing && _first > 0 ? ValueOf(_first - 1) : values[1];
    }

    private double ValueOf(int sample) => source.IsPresent(sample) ? source.Value(sample) : double.NaN;
}
