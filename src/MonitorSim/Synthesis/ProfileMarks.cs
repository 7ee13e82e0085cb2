namespace MonitorSim.Synthesis;

/// <summary>From a moment on a signal is on or off.</summary>
internal readonly record struct SignalMark(long From, string Signal, bool On);

/// <summary>From a moment on a column is noisy.</summary>
/// <param name="From">ns.</param>
/// <param name="OfVelocity">Whether it is the velocity's noise, else the position's.</param>
/// <param name="Deviation">Its standard deviation, SI.</param>
/// <param name="Seed">Which noise.</param>
internal readonly record struct NoiseMark(long From, bool OfVelocity, decimal Deviation, ulong Seed);

/// <summary>Missing cells: from &lt;= t &lt; until, ns.</summary>
internal readonly record struct DropOutMark(long From, long Until);
