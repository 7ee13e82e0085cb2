using MonitorSim.Replays;

namespace MonitorSim.Reports.Scenes;

/// <summary>A stretch of a replay that one can drive, with the one side of the one monitor that it watches.</summary>
/// <param name="Id">Its id in the page.</param>
/// <param name="Caption">What is to be seen.</param>
/// <param name="History">What the chain showed, cycle by cycle.</param>
/// <param name="At">The index, in the history, of the cycle that matters: the trip, or the closest call.</param>
/// <param name="IsTrip">Whether it trips there.</param>
/// <param name="Note">What the reader should know about the cut; empty if nothing.</param>
public sealed record Scene(string Id, string Caption, ChainHistory History, int At, bool IsTrip, string Note)
{
    /// <summary>The cycle that matters.</summary>
    public ChainCycle Cycle => History.Cycles[At];
}
