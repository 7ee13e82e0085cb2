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

    /// <summary>Why a side never trips; null where it can.</summary>
    public string? Unreachable(Lever lever) => Calling.Unreachable ?? lever.Unreachable ?? (lever.Room <= Filter + 1 ? "its filter lasts longer than this side is compared" : null);

    /// <summary>Has it called for. Where what calls moves the same quantity, the cycle of the call is its own, and so is all that passes before standing
    /// has had its effect: what has a reference is measured from there.</summary>
    /// <returns>The cycle at which it is called for.</returns>
    public int Call(Script script, Lever lever)
    {
        var begin = Calling.Call(script);
        if (begin == script.Count && IsMovedByCalling(lever)) script.Run(1);
        if (begin < script.Count) lever.Anchor(script);
        return begin;
    }

    /// <summary>A vector about one of its sides.</summary>
    /// <param name="lever">The side.</param>
    /// <param name="what">What it is about, in a word or two.</param>
    /// <param name="says">What happens and what must come of it.</param>
    /// <param name="script">Signals and channels.</param>
    /// <param name="begin">The cycle from which on it is called for.</param>
    /// <param name="trips">The cycles at which it trips.</param>
    /// <exception cref="VectorException">What calls for it leads the measure past the limit, or keeps it from there.</exception>
    public Draft Draft(Lever lever, string what, string says, Script script, int begin, params IReadOnlyList<int> trips)
    {
        if (IsStop && Calling.By?.Axis == Axis && !trips.SequenceEqual(Seen(lever, script, begin)))
            throw new VectorException($"{Calling.By!.Value.Axis}.{Calling.By.Value.Monitor} has to trip first, and what makes it trip leads this measure past its limit, or keeps it from there");
        return new Draft(Title(lever, what), says, script) { CalledBy = Calling.By, Begins = IsStop ? (Axis, begin) : null }.Mean(Axis, Monitor, lever.Side, trips);
    }

    private bool IsMovedByCalling(Lever lever) => Calling.By is not null && lever.Moves is { } moved && Calling.Moves(Axis) == moved;

    /// <summary>The first trip as the measure has been written.</summary>
    private IEnumerable<int> Seen(Lever lever, Script script, int begin)
    {
        int? since = null;
        for (var cycle = begin + Delay; cycle < script.Count; cycle++)
        {
            since = lever.IsPast(script, cycle, begin + Delay) ? since ?? cycle : null;
            if (cycle - since >= Filter) return [cycle];
        }

        return [];
    }

    /// <summary>What a vector about one of its sides is called.</summary>
    public string Title(Lever lever, string what) =>
        $"{Monitor} {lever.Side}{(lever.Level is { } level ? FormattableString.Invariant($" level {level}") : "")} {what}";
}
