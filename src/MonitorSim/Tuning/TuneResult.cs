namespace MonitorSim.Tuning;

/// <summary>What recordings say about the limits of a plan. Times are seconds, all other numbers SI.</summary>
public sealed record TuneResult
{
    /// <summary>The plan that was tuned.</summary>
    public required TunedPlan Plan { get; init; }
    /// <summary>The recordings, each a run, in order of their names.</summary>
    public required IReadOnlyList<TunedRecording> Recordings { get; init; }
    /// <summary>One entry a monitor, side and level.</summary>
    public required IReadOnlyList<TunedLimit> Monitors { get; init; }
    /// <summary>What each monitor does in each recording over all phases of the plan's cycle, in order; empty where that was not asked.</summary>
    public IReadOnlyList<RunPhases> Phases { get; init; } = [];

    /// <summary>The longest time between two looks of a monitor, s: the plan's cycle, or the longest step between samples where monitors run once a sample.</summary>
    public decimal LongestCycle => Plan.Cycle ?? Recordings.Select(recording => recording.LongestStep).DefaultIfEmpty().Max();

    /// <summary>The same with bounds for another share of future runs or another confidence.</summary>
    /// <param name="coverage">Share of future runs, in (0, 1).</param>
    /// <param name="confidence">Confidence, in (0, 1).</param>
    public TuneResult WithBounds(double coverage = 0.95, double confidence = 0.95) => this with
    {
        Monitors = [.. Monitors.Select(limit => limit with { Bounds = LimitBounds.Of([.. limit.Runs.Select(run => run.Critical).OfType<double>()], limit.IsLower, coverage, confidence) })],
    };
}

/// <summary>What one monitor does in one recording over all phases of the plan's cycle.</summary>
/// <param name="Trace">The recording.</param>
/// <param name="Outcome">What the monitor does.</param>
public sealed record RunPhases(string Trace, PhaseOutcome Outcome);

/// <summary>What parts have to share so that they can be joined, and what room needs to know of the plan.</summary>
/// <param name="Title">The plan's title.</param>
/// <param name="Sha256">The hash of the plan's file; null for a plan built in C#.</param>
/// <param name="Cycle">The monitors' cycle, s; null where they run once a sample.</param>
/// <param name="InputDelay">The age of the newest sample that a cycle can see, s.</param>
/// <param name="ReactionDelay">From a trip to the moment the drive acts, s.</param>
public sealed record TunedPlan(string Title, string? Sha256, decimal? Cycle, decimal InputDelay, decimal ReactionDelay);

/// <summary>One recording of those that were tuned.</summary>
/// <param name="Trace">Its name: the path as it was given.</param>
/// <param name="Sha256">The hash of its bytes; null where there is no file.</param>
/// <param name="Samples">How many samples it has.</param>
/// <param name="Duration">Last sample minus first, s.</param>
/// <param name="LongestStep">The longest time between two samples, s: what a monitor that runs once a sample may miss.</param>
public sealed record TunedRecording(string Trace, string? Sha256, int Samples, decimal Duration, decimal LongestStep);
