using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Channels;

/// <summary>A recording that may be left: from one sample on, its values are those of a simulated motion, and compare as the doubles they are.</summary>
internal sealed class SimulatedChannel(Channel recorded) : Channel
{
    private readonly List<double> _values = [];
    private int _from = int.MaxValue;

    /// <summary>As it was recorded.</summary>
    public Channel Recorded => recorded;

    /// <summary>States the simulated value of a sample; each from the first on.</summary>
    public void Append(int sample, double value)
    {
        if (_values.Count == 0) _from = sample;
        _values.Add(value);
    }

    public override Presence At(int sample) => sample < _from ? recorded.At(sample) : Presence.Present;

    public override double Value(int sample) => sample < _from ? recorded.Value(sample) : _values[sample - _from];

    public override double Error(int sample) => sample < _from ? recorded.Error(sample) : 0;

    public override Fraction Exact(int sample) => sample < _from ? recorded.Exact(sample) : ExactDouble.Of(_values[sample - _from]);
}
