using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>What one monitor does over all phases of the cycle. Times and phases in seconds.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Earliest">The earliest first trip; null where no phase trips.</param>
/// <param name="EarliestPhase">The phase that gives it.</param>
/// <param name="Latest">The latest first trip; null where no phase trips.</param>
/// <param name="LatestPhase">The phase that gives it.</param>
/// <param name="QuietPhase">A phase that does not trip; null where every phase trips.</param>
public sealed record PhaseOutcome(string Axis, string Monitor, decimal? Earliest, decimal? EarliestPhase, decimal? Latest, decimal? LatestPhase, decimal? QuietPhase)
{
    /// <summary>What each limit of the monitor would have to be at the worst and at the best phase; empty for stops.</summary>
    public IReadOnlyList<PhaseLimit> Limits { get; init; } = [];

    /// <summary>Whether it trips at some phases and not at others: chance decides on the machine.</summary>
    public bool DependsOnPhase => Earliest is not null && QuietPhase is not null;

    internal PhaseOutcome With(long phase, long stretch, long? trip)
    {
        if (trip is not { } time) return this with { QuietPhase = QuietPhase ?? Seconds.Of(phase) };
        var result = this;
        if (!(result.Earliest <= Seconds.Of(time))) result = result with { Earliest = Seconds.Of(time), EarliestPhase = Seconds.Of(phase) };
        if (!(result.Latest >= Seconds.Of(time + stretch))) result = result with { Latest = Seconds.Of(time + stretch), LatestPhase = Seconds.Of(phase + stretch) };
        return result;
    }
}

/// <summary>The critical limit of one side over all phases of the cycle, at the present filter. SI; phases in seconds, the first of equal ones.</summary>
/// <param name="Side">The side.</param>
/// <param name="Level">The level, from 0; null where there are none.</param>
/// <param name="Worst">The largest (for lower sides the smallest); null where nothing is compared long enough at any phase.</param>
/// <param name="WorstPhase">The phase that gives it.</param>
/// <param name="Best">The smallest (for lower sides the largest); null where at some phase nothing is compared long enough, so that nothing trips whatever the limit is.</param>
/// <param name="BestPhase">The phase that gives it.</param>
public sealed record PhaseLimit(string Side, int? Level, double? Worst, decimal WorstPhase, double? Best, decimal BestPhase)
{
    private bool IsLower => Side == "lower";

    /// <summary>This and what one further phase says.</summary>
    internal PhaseLimit With(PhaseLimit here)
    {
        var result = this;
        if (IsMore(here.Worst, Worst)) result = result with { Worst = here.Worst, WorstPhase = here.WorstPhase };
        if (IsMore(Best, here.Best)) result = result with { Best = here.Best, BestPhase = here.BestPhase };
        return result;
    }

    // No limit at all is the least that can be needed.
    private bool IsMore(double? one, double? other) => one is { } a && (other is not { } b || (IsLower ? a < b : a > b));
}
