using MonitorSim.Motion;

namespace MonitorSim.Reports;

/// <summary>What the report of a replay tells of: a plan, and the recordings that were replayed through it.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Replays">The recordings with their results; at least one.</param>
public sealed record ReplayReport(Plan Plan, IReadOnlyList<ReplayedTrace> Replays);

/// <summary>A recording and what its replay found.</summary>
/// <param name="Trace">The recording.</param>
/// <param name="Result">The replay.</param>
/// <param name="Faults">What was injected into it; null: nothing.</param>
public sealed record ReplayedTrace(Trace Trace, ReplayResult Result, IReadOnlyList<Injection>? Faults = null);
