using MonitorSim.Plans;

namespace MonitorSim.Tuning;

/// <summary>What recordings say about one limit. Times are seconds, all other numbers SI.</summary>
public sealed record TunedLimit
{
    /// <summary>The axis.</summary>
    public required string Axis { get; init; }
    /// <summary>The monitor.</summary>
    public required string Monitor { get; init; }
    /// <summary>The function, such as <c>SLS</c>.</summary>
    public required string Function { get; init; }
    /// <summary>The limit side.</summary>
    public required string Side { get; init; }
    /// <summary>The level, from 0; null where there are none.</summary>
    public int? Level { get; init; }
    /// <summary>The SI unit.</summary>
    public required string Unit { get; init; }
    /// <summary>The present limit as the plan writes it, in the user's unit.</summary>
    public required string Written { get; init; }
    /// <summary>The present filter, s.</summary>
    public required decimal Filter { get; init; }
    /// <summary>The present limit, SI.</summary>
    public required double Limit { get; init; }
    /// <summary>What a trip demands.</summary>
    public Reaction Reaction { get; init; }
    /// <summary>Whether the limit is one from below, so that the critical limit is the largest that does not trip.</summary>
    public bool IsLower => Side == "lower";
    /// <summary>The critical limit at the present filter, over all recordings; null where nothing was compared long enough.</summary>
    public double? Critical { get; init; }
    /// <summary>Any longer filter does not trip at the present limit, s; null where nothing exceeds it.</summary>
    public decimal? FilterAbove { get; init; }
    /// <summary>The longest delay that trips at the present limit, s; null where nothing trips or even the last start does.</summary>
    public decimal? DelayAbove { get; init; }
    /// <summary>Whether no delay within the request keeps the present limit: even the last start trips in some recording.</summary>
    public bool NoDelayHelps { get; init; }
    /// <summary>The critical limit for every filter: filters rising, limits falling (for lower sides rising).</summary>
    public required IReadOnlyList<FrontierStep> Frontier { get; init; }
    /// <summary>The critical limit of each recording, in order of their names.</summary>
    public required IReadOnlyList<RunCritical> Runs { get; init; }
    /// <summary>How sure the limit is for the next run.</summary>
    public required LimitBounds Bounds { get; init; }
    /// <summary>Whether what is needed rises or falls from run to run, in the order of their names; null where that cannot be told.</summary>
    public RunTrend? Trend => RunTrend.Of([.. Runs.Select(run => run.Critical).OfType<double>()]);
    /// <summary>From what production needs to what the hazard allows; see <see cref="Rooms"/>.</summary>
    public Room Room { get; init; } = new();

    /// <summary>The step that gives the critical limit at the present filter: which recording decides, and where.</summary>
    public FrontierStep? Deciding => At(Filter);

    /// <summary>The step for a filter; null where no stretch lasts as long, so that nothing trips whatever the limit is.</summary>
    /// <param name="filter">The filter, s, >= 0.</param>
    public FrontierStep? At(decimal filter) => Frontier.FirstOrDefault(step => filter <= step.Filter);

    /// <summary>What tells the limits of a plan apart.</summary>
    internal (string Axis, string Monitor, string Side, int? Level) Key => (Axis, Monitor, Side, Level);
}

/// <summary>One step of a frontier.</summary>
/// <param name="Filter">Up to and including this filter, s, …</param>
/// <param name="Limit">… this is the critical limit, SI.</param>
/// <param name="From">Where the deciding stretch begins, s.</param>
/// <param name="Until">Where it ends, s.</param>
/// <param name="Trace">The recording that decides.</param>
public sealed record FrontierStep(decimal Filter, double Limit, decimal From, decimal Until, string Trace);

/// <summary>The critical limit of one recording.</summary>
/// <param name="Trace">The recording.</param>
/// <param name="Critical">SI; null where nothing was compared long enough.</param>
public sealed record RunCritical(string Trace, double? Critical)
{
    /// <summary>The frontier of this recording alone, for pictures. Files keep it only where that was asked, and JSON never does: thousands of them would not be small.</summary>
    public IReadOnlyList<FrontierStep> Frontier { get; init; } = [];
}
