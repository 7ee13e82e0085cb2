using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>A monitor, or a stop as far as it compares something, as a family of vectors sees it.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Calling">How it is called for.</param>
/// <param name="Delay">Cycles from then to the first watching one.</param>
/// <param name="Filter">Cycles from the first exceeding one to the trip.</param>
/// <param name="Reaction">What a trip demands.</param>
internal sealed record Subject(string Axis, string Monitor, Calling Calling, int Delay, int Filter, Reaction Reaction)
{
    /// <summary>Whether it is a stop, which a state calls for.</summary>
    public bool IsStop => Monitor is "STO" or "SS1" or "SS2" or "SOS" or "SBC";

    public Branch Branch(Lever lever, string rule, string from) => new(Axis, Monitor, lever.Side, lever.Level, rule, from);

    /// <summary>What a vector about one of its sides is called.</summary>
    public string Title(Lever lever, string what) =>
        $"{Monitor} {lever.Side}{(lever.Level is { } level ? FormattableString.Invariant($" level {level}") : "")} {what}";
}
