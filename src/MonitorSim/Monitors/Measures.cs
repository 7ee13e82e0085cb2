using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Monitors;

/// <summary>The measures of one monitor: all that differs between functions. It knows nothing of filters, trips, files or units.</summary>
internal abstract class Measures
{
    private Comparison[]? _scratch;

    /// <summary>The limit sides, in the order in which they are reported; none for outputs.</summary>
    public abstract IReadOnlyList<Side> Sides { get; }

    /// <summary>The recordings without which nothing can be compared.</summary>
    public abstract IReadOnlyList<Channel> Needs { get; }

    /// <summary>Forgets all references: the request came anew.</summary>
    public virtual void Forget() { }

    /// <summary>Keeps what it remembers of samples apart from the recording, which is about to be let go.</summary>
    public virtual void LetGo() { }

    /// <summary>Carries what it remembers.</summary>
    public virtual void Carry(Checkpoint checkpoint) { }

    /// <summary>Measures one cycle of a request.</summary>
    /// <param name="cycle">The cycle.</param>
    /// <param name="watch">How long the request has held, and whether the monitor is watching.</param>
    /// <param name="comparisons">One a side, all not made at first.</param>
    public abstract void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons);

    /// <summary>Whether the function's output is on; null for functions without an output. Asked for once a cycle.</summary>
    public virtual bool? Output(in Cycle cycle, bool isActive) => null;

    /// <summary>Whether from now on, while the monitor watches and its request stays as it is, what is compared depends on the sample alone.</summary>
    public virtual bool IsSettled => false;

    /// <summary>The first sample from one on, before another, at which the measure of a side may be more than a bound, or at which an input has no
    /// value. It may name a sample too many, never one too late. Asked only where <see cref="IsSettled"/>.</summary>
    public virtual int FirstAbove(int side, double bound, int from, int until, Watch watch)
    {
        _scratch ??= new Comparison[Sides.Count];
        for (var k = from; k < until; k++)
        {
            _scratch.AsSpan().Clear();
            Compare(new(k, watch.RequestedAt, k), watch, _scratch);
            ref readonly var comparison = ref _scratch[side];
            if (comparison.IsMade ? comparison.Reading.Value + comparison.Reading.Error >= bound : LacksValue(k)) return k;
        }

        return until;
    }

    /// <summary>Doubles in the order of what a side compares, sample by sample, NaN where it compares nothing; null where there are none at hand. Asked only where
    /// <see cref="IsSettled"/>.</summary>
    public virtual Ranking? Ranking(int side) => null;

    /// <summary>The first sample from one on, before another, at which the output may change, as long as the monitor stays as it is.</summary>
    public virtual int NextOutputChange(bool isActive, int from, int until) => until;

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

    private bool LacksValue(int sample)
    {
        foreach (var channel in Needs)
            if (!channel.IsPresent(sample)) return true;
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
