using MonitorSim.Tuning;

namespace MonitorSim.Reports;

/// <summary>What the report of a tuning tells of: what recordings say about the limits of a plan.</summary>
/// <param name="Tuning">What the recordings say.</param>
/// <param name="Plan">The plan with all its settings; null where parts were joined, which know only its title and hash.</param>
public sealed record TuneReport(TuneResult Tuning, Plan? Plan = null);
