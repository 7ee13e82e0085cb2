using MonitorSim.Replays;

namespace MonitorSim.Monitors;

/// <summary>The first three links of the chain: request, arming, measure. It knows no trips.</summary>
/// <param name="measures">What is measured.</param>
/// <param name="delay">From the request to the first watching cycle, ns.</param>
internal sealed class Watch(Measures measures, long delay)
{
    private readonly Comparison[] _comparisons = new Comparison[measures.Sides.Count];

    public Measures Measures { get; } = measures;

    /// <summary>The arming delay, ns.</summary>
    public long Delay { get; } = delay;

    /// <summary>The chosen level (0 where there is one limit); -1 without a request.</summary>
    public int Choice { get; private set; } = -1;

    public bool IsRequested => Choice >= 0;

    public bool IsWatching => WatchingSince is not null;

    /// <summary>t_a: the cycle time of the request's rising edge, ns.</summary>
    public long RequestedAt { get; private set; }

    /// <summary>The time of the first watching cycle, ns; null while not watching.</summary>
    public long? WatchingSince { get; private set; }

    /// <summary>What each side has to say at the latest cycle.</summary>
    public ReadOnlySpan<Comparison> Comparisons => _comparisons;

    public void Carry(Checkpoint checkpoint)
    {
        (Choice, RequestedAt, WatchingSince) = (checkpoint.Of(Choice), checkpoint.Of(RequestedAt), checkpoint.Of(WatchingSince));
        Measures.Carry(checkpoint);
    }

    /// <summary>Takes one cycle.</summary>
    /// <param name="cycle">The cycle.</param>
    /// <param name="choice">The level asked for; -1 without a request.</param>
    /// <param name="anew">Whether a request that was there already counts as new (an acknowledgement).</param>
    public void Step(in Cycle cycle, int choice, bool anew = false)
    {
        _comparisons.AsSpan().Clear();
        if (choice < 0)
        {
            (Choice, WatchingSince) = (-1, null);
            return;
        }

        if (!IsRequested || anew)
        {
            (RequestedAt, WatchingSince) = (cycle.Time, null);
            Measures.Forget();
        }

        Choice = choice;
        if (!IsWatching && cycle.Time - RequestedAt >= Delay) WatchingSince = cycle.Time;
        Measures.Compare(cycle, this, _comparisons);
    }
}
