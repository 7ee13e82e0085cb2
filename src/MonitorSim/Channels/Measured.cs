namespace MonitorSim.Channels;

/// <summary>One quantity of an axis as monitors see it: the first recording, and the second where there is one.</summary>
/// <param name="First">The recording that counts, unless said otherwise.</param>
/// <param name="Second">A second recording of the same quantity, or null.</param>
/// <param name="Unit">The SI unit's symbol.</param>
internal sealed record Measured(Channel First, Channel? Second, string Unit)
{
    public bool IsPresent(int sample) => First.IsPresent(sample) && (Second is null || Second.IsPresent(sample));

    /// <summary>All recordings: what magnitudes need.</summary>
    public IReadOnlyList<Channel> Both => Second is null ? [First] : [First, Second];

    /// <summary>The first recording's value.</summary>
    public Reading Value(int sample) => Reading.Of(First, sample);

    /// <summary>The larger magnitude of the two recordings: for upper limits.</summary>
    public Reading Largest(int sample)
    {
        var first = Reading.Of(First, sample).Magnitude();
        return Second is null ? first : Reading.Larger(first, Reading.Of(Second, sample).Magnitude());
    }

    /// <summary>The smaller magnitude of the two recordings: for lower limits.</summary>
    public Reading Least(int sample)
    {
        var first = Reading.Of(First, sample).Magnitude();
        return Second is null ? first : Reading.Smaller(first, Reading.Of(Second, sample).Magnitude());
    }

    /// <summary>The order of what an upper limit compares, the larger magnitude or the first recording with its sign; null where none is at hand.</summary>
    public Ranking? Ranking(bool signed) => signed ? First.Ranking(magnitude: false) : Second is null ? First.Ranking(magnitude: true) : null;

    /// <summary>The first sample at which an upper limit may be exceeded: the larger magnitude, or the first recording with its sign; or at which a
    /// value is missing.</summary>
    public int FirstAbove(double bound, bool signed, int from, int until)
    {
        if (signed) return First.FirstOutside(double.NegativeInfinity, bound, from, until);
        var first = First.FirstOutside(-bound, bound, from, until);
        return Second is null ? first : Second.FirstOutside(-bound, bound, from, first);
    }

    /// <summary>The first sample at which a lower limit may not be reached: by the smaller magnitude, or by the first recording with its sign; or at which a
    /// value is missing.</summary>
    public int FirstBelow(double bound, bool signed, int from, int until)
    {
        if (signed) return First.FirstOutside(bound, double.PositiveInfinity, from, until);
        var first = First.FirstWithin(-bound, bound, from, until);
        return Second is null ? first : Second.FirstWithin(-bound, bound, from, first);
    }
}
