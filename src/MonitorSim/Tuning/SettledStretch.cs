using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>The rest of a stretch of request in which what one side compares depends on the sample alone, so that its cycles can be asked in any order.</summary>
/// <param name="watch">The watch at the first of these cycles.</param>
/// <param name="side">The side's index.</param>
/// <param name="clock">The cycles.</param>
/// <param name="from">The first cycle.</param>
/// <param name="until">The cycle after the last.</param>
internal sealed class SettledStretch(Watch watch, int side, CycleClock clock, int from, int until)
{
    private readonly Comparison[] _comparisons = new Comparison[watch.Measures.Sides.Count];
    private readonly int _lastSample = clock.Seeing(until - 1).Sample;

    public int From => from;

    public int Until => until;

    public CycleClock Clock => clock;

    /// <summary>Doubles in the order of the measures, by sample; null where there are none at hand.</summary>
    public Ranking? Ranking { get; } = watch.Measures.Ranking(side);

    /// <summary>Whether a cycle's measure may rank above another; where there are no ranks, or nothing is compared, only measuring tells.</summary>
    public bool MayRankAbove(double rank, int cycle) => Ranking is not { } ranking || ranking[clock.Seeing(cycle).Sample] > rank;

    /// <summary>The smallest rank of some cycles that all have measures; of no use (below all) where there are no ranks.</summary>
    public double SmallestRank(int first, int last)
    {
        if (Ranking is not { } ranking) return double.NegativeInfinity;
        var smallest = double.PositiveInfinity;
        for (var n = first; n <= last; n++) smallest = Math.Min(smallest, ranking[clock.Seeing(n).Sample]);
        return smallest;
    }

    /// <summary>The measure at a cycle.</summary>
    /// <returns>Whether anything is compared there.</returns>
    public bool TryMeasure(in Cycle cycle, out Reading reading)
    {
        _comparisons.AsSpan().Clear();
        watch.Measures.Compare(cycle, watch, _comparisons);
        reading = _comparisons[side].Reading;
        return _comparisons[side].IsMade;
    }

    /// <summary>The first cycle from one on at which the measure may be more than a bound; it may name a cycle too many, never one too late.</summary>
    public int FirstAbove(double bound, int cycle)
    {
        if (cycle >= until) return until;
        var sample = watch.Measures.FirstAbove(side, bound, clock.Seeing(cycle).Sample, _lastSample + 1, watch);
        return sample > _lastSample ? until : Math.Min(clock.FirstSeeing(sample, cycle), until);
    }
}
