using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>A monitor as a family of vectors sees it: when it is asked for, and how its delay and filter count in cycles.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor.</param>
/// <param name="Asking">When it is asked for.</param>
/// <param name="Delay">Cycles from the request to the first watching one.</param>
/// <param name="Filter">Cycles from the first exceeding one to the trip.</param>
/// <param name="Reaction">What a trip demands.</param>
internal sealed record Subject(string Axis, string Monitor, Asking Asking, int Delay, int Filter, Reaction Reaction)
{
    public Branch Branch(Lever lever, string rule, string from) => new(Axis, Monitor, lever.Side, lever.Level, rule, from);
}
