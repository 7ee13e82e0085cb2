using MonitorSim.Channels;

namespace MonitorSim.Monitors;

/// <summary>The measures of one monitor: all that differs between functions. It knows nothing of filters, trips, files or units.</summary>
internal abstract class Measures
{
    /// <summary>The limit sides, in the order in which they are reported; none for outputs.</summary>
    public abstract IReadOnlyList<Side> Sides { get; }

    /// <summary>The recordings without which nothing can be compared.</summary>
    public abstract IReadOnlyList<Channel> Needs { get; }

    /// <summary>Forgets all references: the request came anew.</summary>
    public virtual void Forget() { }

    /// <summary>Measures one cycle of a request.</summary>
    /// <param name="cycle">The cycle.</param>
    /// <param name="watch">How long the request has held, and whether the monitor is watching.</param>
    /// <param name="comparisons">One a side, all not made at first.</param>
    public abstract void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons);

    /// <summary>Whether the function's output is on; null for functions without an output. Asked for once a cycle.</summary>
    public virtual bool? Output(in Cycle cycle, bool isActive) => null;

    /// <summary>How a side depends on the arming delay.</summary>
    public virtual DelayMeaning DelayMatters(int side) => DelayMeaning.Start;

    /// <summary>The position that a reference is latched of, where <see cref="DelayMatters"/> says so.</summary>
    public virtual Channel? Reference => null;

    public bool LacksInput(int sample)
    {
        foreach (var channel in Needs)
            if (channel.At(sample) == Presence.Missing) return true;
        return false;
    }
}

/// <summary>How the outcome of a side depends on the arming delay.</summary>
internal enum DelayMeaning
{
    /// <summary>It decides from when on is compared, and nothing else.</summary>
    Start,
    /// <summary>A reference remembers where watching began.</summary>
    Reference,
    /// <summary>It counts at every change of level, or while arming.</summary>
    Throughout,
}
