using MonitorSim.Motion;
using MonitorSim.Plans;

namespace MonitorSim;

/// <summary>What a replay found. Times are seconds from the recording's first sample, exact to the nanosecond; all other numbers are SI.</summary>
public sealed record ReplayResult
{
    /// <summary>The plan that was replayed.</summary>
    public required Plan Plan { get; init; }
    /// <summary>The recording's name.</summary>
    public required string Trace { get; init; }
    /// <summary>The hash of the recording's bytes, or null.</summary>
    public string? TraceSha256 { get; init; }
    /// <summary>How many samples were seen.</summary>
    public required int Samples { get; init; }
    /// <summary>Last sample minus first, s.</summary>
    public required decimal Duration { get; init; }
    /// <summary>All trips, by time, axis, monitor and side.</summary>
    public required IReadOnlyList<Trip> Trips { get; init; }
    /// <summary>Every run over a limit, tripping or not.</summary>
    public required IReadOnlyList<Excursion> Excursions { get; init; }
    /// <summary>The changes of every output, from off.</summary>
    public required IReadOnlyList<OutputTimeline> Outputs { get; init; }
    /// <summary>The changes of every axis's state, from Running.</summary>
    public required IReadOnlyList<StateTimeline> States { get; init; }
    /// <summary>The room to every limit.</summary>
    public required IReadOnlyList<Headroom> Headroom { get; init; }
    /// <summary>How far the recording challenged every monitor.</summary>
    public required IReadOnlyList<Coverage> Coverage { get; init; }
    /// <summary>How the plan's <c>expect</c> lines came out.</summary>
    public required IReadOnlyList<Expectation> Expect { get; init; }
    /// <summary>The log.</summary>
    public required IReadOnlyList<ReplayEvent> Events { get; init; }
    /// <summary>What its reader should know before trusting it.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
    /// <summary>When each monitor asked, armed and watched, for pictures and explanations.</summary>
    public required IReadOnlyList<WatchTimeline> Watching { get; init; }
    /// <summary>The motion of the axes that left their recordings (<c>"motion": "simulated"</c>).</summary>
    public IReadOnlyList<SimulatedMotion> Simulated { get; init; } = [];

    /// <summary>Whether anything tripped.</summary>
    public bool IsTripped => Trips.Count > 0;
}

/// <summary>A trip with its evidence.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Function">The function's abbreviation.</param>
/// <param name="Side">The limit side; <c>invalid input</c> has neither value nor limit.</param>
/// <param name="Level">The level in force, from 0; null where there are none.</param>
/// <param name="Sample">The sample that the tripping cycle saw.</param>
/// <param name="Time">The tripping cycle's time, s.</param>
/// <param name="Value">The measure at that cycle, SI.</param>
/// <param name="Limit">The limit, SI.</param>
/// <param name="Unit">The SI unit of value and limit.</param>
/// <param name="Peak">The largest measure of the exceedance so far (for lower sides the least), SI.</param>
/// <param name="RequestedAt">When the request came, s.</param>
/// <param name="WatchingAt">When watching began, s; null where it tripped while arming.</param>
/// <param name="ExceededAt">When the exceedance began, s.</param>
/// <param name="Reaction">What the trip demands.</param>
/// <param name="AvoidedBy">What would have avoided it.</param>
public sealed record Trip(string Axis, string Monitor, string Function, string Side, int? Level, int Sample, decimal Time, double? Value, double? Limit,
    string? Unit, double? Peak, decimal RequestedAt, decimal? WatchingAt, decimal ExceededAt, Reaction Reaction, AvoidedBy AvoidedBy);

/// <summary>What would have avoided a trip, each with everything else unchanged.</summary>
/// <param name="Limit">The smallest limit that does not trip (for lower sides the largest), SI.</param>
/// <param name="FilterAbove">Any longer filter does not trip, s.</param>
/// <param name="DelayAbove">The longest delay that trips, s; null where even the last start within the request trips.</param>
/// <param name="Exact">Whether this holds whatever else changes; false for stops and where the request depends on an output or a state.</param>
public sealed record AvoidedBy(double? Limit, decimal? FilterAbove, decimal? DelayAbove, bool Exact);

/// <summary>A run over a limit.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Side">The limit side.</param>
/// <param name="From">Its first cycle, s.</param>
/// <param name="Until">Its last cycle, s.</param>
/// <param name="Peak">The largest measure (for lower sides the least), SI.</param>
/// <param name="PeakAt">The first cycle with it, s.</param>
/// <param name="Trips">Whether it tripped.</param>
public sealed record Excursion(string Axis, string Monitor, string Side, decimal From, decimal Until, double Peak, decimal PeakAt, bool Trips)
{
    /// <summary>Last cycle minus first, s.</summary>
    public decimal Duration => Until - From;
}

/// <summary>The changes of one output, from off.</summary>
public sealed record OutputTimeline(string Axis, string Monitor, IReadOnlyList<OutputEdge> Edges);

/// <summary>One change of an output.</summary>
/// <param name="Time">s.</param>
/// <param name="On">What it became.</param>
public sealed record OutputEdge(decimal Time, bool On);

/// <summary>The changes of one axis's state, from Running.</summary>
public sealed record StateTimeline(string Axis, IReadOnlyList<StateChange> Changes);

/// <summary>One change of state.</summary>
/// <param name="Time">s.</param>
/// <param name="State">What it became.</param>
/// <param name="Cause">The causes that acted, as axis.monitor; or <c>standstill</c>, <c>time</c>, <c>released</c>.</param>
public sealed record StateChange(decimal Time, AxisState State, string Cause);

/// <summary>The room to one limit over the whole recording.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Side">The limit side.</param>
/// <param name="Level">The level, from 0; null where there are none.</param>
/// <param name="Critical">The smallest limit that does not trip (for lower sides the largest), SI; null where nothing was compared long enough.</param>
/// <param name="Limit">The limit, SI.</param>
/// <param name="Room">Limit minus critical (for lower sides the other way round), SI: positive where there is room.</param>
/// <param name="Percent">The room in percent of the limit's magnitude; null where that is 0.</param>
/// <param name="Time">The first cycle at which a limit just below the critical one would trip, s.</param>
/// <param name="Unit">The SI unit.</param>
public sealed record Headroom(string Axis, string Monitor, string Side, int? Level, double? Critical, double Limit, double? Room, double? Percent,
    decimal? Time, string Unit);

/// <summary>How far a recording challenged a monitor.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Requests">How often it was requested (for a stop: began).</param>
/// <param name="Watched">How long it watched, s.</param>
/// <param name="Trips">How often it tripped.</param>
public sealed record Coverage(string Axis, string Monitor, int Requests, decimal Watched, int Trips);

/// <summary>How one of the plan's <c>expect</c> lines came out.</summary>
/// <param name="Index">The line, from 0.</param>
/// <param name="Holds">Whether it holds.</param>
/// <param name="Because">Why, in a sentence.</param>
public sealed record Expectation(int Index, bool Holds, string Because);

/// <summary>One line of the log.</summary>
/// <param name="Time">s.</param>
/// <param name="Axis">The axis.</param>
/// <param name="Source">The monitor, stop or cause.</param>
/// <param name="Event">What happened.</param>
public sealed record ReplayEvent(decimal Time, string Axis, string Source, string Event);

/// <summary>When a monitor was asked for and when it watched.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Stretches">Every stretch of request.</param>
public sealed record WatchTimeline(string Axis, string Monitor, IReadOnlyList<WatchStretch> Stretches);

/// <summary>A stretch of request.</summary>
/// <param name="RequestedAt">When it began (or was acknowledged), s.</param>
/// <param name="WatchingAt">When watching began, s; null if it never did.</param>
/// <param name="Until">Its last cycle, s.</param>
public sealed record WatchStretch(decimal RequestedAt, decimal? WatchingAt, decimal Until);

/// <summary>How an axis moved after it left its recording.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="From">When it left, s.</param>
/// <param name="Start">Where it was and how fast when it left, and what acted from then on; its time is that of the recording.</param>
/// <param name="States">One state a sample after that; times are those of the recording.</param>
public sealed record SimulatedMotion(string Axis, decimal From, MotionState Start, IReadOnlyList<MotionState> States);
