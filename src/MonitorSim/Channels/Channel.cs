using Fractions;
using MonitorSim.Replays;

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

    /// <summary>Doubles in the very order of the exact values, or of their magnitudes; null where there are none at hand.</summary>
    public virtual Ranking? Ranking(bool magnitude) => null;

    public bool IsPresent(int sample) => At(sample) == Presence.Present;

    /// <summary>How many samples before the newest one it looks at.</summary>
    public virtual int LooksBack => 0;

    /// <summary>Forgets what it keeps of the samples before one, for good; what it will still need of them it takes first.</summary>
    public virtual void LetGo(int before) { }

    /// <summary>Carries what it has worked out.</summary>
    public virtual void Carry(Checkpoint checkpoint) { }

    /// <summary>The first sample from one on, before another, that may lie outside low to high, or has no value; <paramref name="until"/> if there
    /// is none. It may name a sample too many, never one too late: the bounds are narrowed by more than all errors.</summary>
    public virtual int FirstOutside(double low, double high, int from, int until)
    {
        var margin = MarginOf(low, high);
        for (var k = from; k < until; k++)
        {
            if (!IsPresent(k)) return k;
            var (value, error) = (Value(k), Error(k));
            if (!(value - error >= low + margin && value + error <= high - margin)) return k;
        }

        return until;
    }

    /// <summary>The first sample from one on, before another, that may lie within low to high, or has no value; <paramref name="until"/> if there
    /// is none. As careful as <see cref="FirstOutside"/>.</summary>
    public virtual int FirstWithin(double low, double high, int from, int until)
    {
        var margin = MarginOf(low, high);
        for (var k = from; k < until; k++)
        {
            if (!IsPresent(k)) return k;
            var (value, error) = (Value(k), Error(k));
            if (!(value + error < low - margin || value - error > high + margin)) return k;
        }

        return until;
    }

    /// <summary>More than the bounds themselves and the sums with them can err by.</summary>
    protected static double MarginOf(double low, double high)
    {
        static double Finite(double bound) => double.IsInfinity(bound) ? 0 : Math.Abs(bound);
        return 1e-12 * Math.Max(Finite(low), Finite(high)) + 64 * double.Epsilon;
    }
}
