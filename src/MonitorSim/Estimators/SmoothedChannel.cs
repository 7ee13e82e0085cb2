using Fractions;
using MonitorSim.Quantities;
using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Estimators;

/// <summary>A smoothing estimator: what it gives is compared as the double it is.</summary>
internal abstract class SmoothedChannel(Channel source, SampleTimes times) : DerivedChannel(source, times)
{
    private readonly Samples<double> _values = new();

    public override Presence At(int sample)
    {
        var presence = base.At(sample);
        return presence == Presence.Present && double.IsNaN(Value(sample)) ? Presence.Missing : presence;
    }

    public sealed override double Value(int sample)
    {
        while (_values.Count <= sample)
        {
            var k = _values.Count;
            _values.Append(base.At(k) == Presence.Present ? Estimate(k) : double.NaN);
        }

        return _values[sample];
    }

    public override void LetGo(int before)
    {
        base.LetGo(before);
        Value(before);
        _values.LetGo(before);
    }

    public override void Carry(Checkpoint checkpoint)
    {
        base.Carry(checkpoint);
        _values.Carry(checkpoint);
    }

    /// <summary>Forgets what was given for the newest sample, because the sample changes.</summary>
    /// <param name="sample">The newest sample.</param>
    public void Forget(int sample)
    {
        if (_values.Count != sample + 1) return;
        if (!double.IsNaN(_values[sample])) Undo();
        _values.TakeBack();
    }

    public sealed override double Error(int sample) => 0;

    public sealed override Fraction Exact(int sample) => ExactDouble.Of(Value(sample));

    /// <summary>The rate at a sample; asked for once a sample, in order, only where the source has a value. NaN where it has none.</summary>
    protected abstract double Estimate(int sample);

    /// <summary>Takes back what the newest estimate has left in the estimator beside its value.</summary>
    protected virtual void Undo() { }

    /// <summary>The value of the sample before, NaN where there was none.</summary>
    protected double Previous(int sample) => sample > 0 ? _values[sample - 1] : double.NaN;

    protected double BackwardDifference(int sample) =>
        (Source.Value(sample) - Source.Value(sample - 1)) / Times.Seconds(sample - 1, sample);
}
