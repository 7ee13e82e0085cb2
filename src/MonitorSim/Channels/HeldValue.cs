using Fractions;

namespace MonitorSim.Channels;

/// <summary>A single value, kept while the recording that it came from is let go.</summary>
internal sealed class HeldValue(double value, double error, Fraction exact) : Channel
{
    public override Presence At(int sample) => Presence.Present;

    public override double Value(int sample) => value;

    public override double Error(int sample) => error;

    public override Fraction Exact(int sample) => exact;
}
