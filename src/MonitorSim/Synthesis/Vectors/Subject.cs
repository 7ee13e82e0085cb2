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

    /// <summary>A vector about one of its sides.</summary>
    /// <param name="lever">The side.</param>
    /// <param name="what">What it is about, in a word or two.</param>
    /// <param name="says">What happens and what must come of it.</param>
    /// <param name="script">Signals and channels.</param>
    /// <param name="begin">The cycle from which on it is called for.</param>
    /// <param name="trips">The cycles at which it trips.</param>
    public Draft Draft(Lever lever, string what, string says, Script script, int begin, params IEnumerable<int> trips) =>
        new Draft(Title(lever, what), says, script) { CalledBy = Calling.By, Begins = IsStop ? (Axis, begin) : null }.Mean(Axis, Monitor, lever.Side, trips);

    /// <summary>What a vector about one of its sides is called.</summary>
    public string Title(Lever lever, string what) =>
        $"{Monitor} {lever.Side}{(lever.Level is { } level ? FormattableString.Invariant($" level {level}") : "")} {what}";
}
