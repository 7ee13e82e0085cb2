namespace MonitorSim.Monitors;

/// <summary>One cycle of monitors and reactor.</summary>
/// <param name="Index">The cycle's number n, from 0.</param>
/// <param name="Time">Its time c_n in nanoseconds.</param>
/// <param name="Sample">The newest sample that it sees.</param>
internal readonly record struct Cycle(int Index, long Time, int Sample);
