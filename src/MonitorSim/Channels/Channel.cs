using Fractions;

namespace MonitorSim.Channels;

/// <summary>Whether a channel has a value at a sample.</summary>
internal enum Presence
{
    Present,
    /// <summary>A derived rate before its first samples: not compared, but not missing either.</summary>
    NotYet,
    /// <summary>The recording lacks the cell that it needs.</summary>
    Missing,
}

/// <summary>One quantity of an axis over the samples of a recording, in SI, of the load side. Every value is a double with a bound on its
/// error and, for the rare second look, the exact number behind it.</summary>
internal abstract class Channel
{
    public abstract Presence At(int sample);

    /// <summary>The value, at most <see cref="Error"/> from <see cref="Exact"/>. Only where it is present.</summary>
    public abstract double Value(int sample);

    /// <summary>A bound on the distance between <see cref="Value"/> and <see cref="Exact"/>.</summary>
    public abstract double Error(int sample);

    /// <summary>The number that recording and plan stand for, without rounding; for smoothing estimators the double itself.</summary>
    public abstract Fraction Exact(int sample);

    public bool IsPresent(int sample) => At(sample) == Presence.Present;
}
