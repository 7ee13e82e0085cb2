namespace MonitorSim.Replays;

/// <summary>When a monitor was asked for, and at which level: kept as changes, so that it can be measured again after the replay.</summary>
internal sealed class RequestTrack
{
    private readonly List<(int Cycle, int Choice)> _changes = [];

    /// <summary>How often the request came.</summary>
    public int Requests { get; private set; }

    /// <summary>States the choice at a cycle; -1 without a request.</summary>
    /// <param name="cycle">The cycle's index; in rising order.</param>
    /// <param name="choice">The level, or -1.</param>
    /// <param name="anew">Whether an ongoing request begins again here (a stop that begins again within a cycle).</param>
    public void Set(int cycle, int choice, bool anew = false)
    {
        var last = _changes.Count == 0 ? -1 : _changes[^1].Choice;
        if (choice >= 0 && (last < 0 || anew)) Requests++;
        if (anew && last >= 0) _changes.Add((cycle, -1));
        if (choice != last || anew) _changes.Add((cycle, choice));
    }

    /// <summary>Forgets all changes but the last.</summary>
    public void LetGo() => _changes.RemoveRange(0, Math.Max(0, _changes.Count - 1));

    public void Carry(Checkpoint checkpoint)
    {
        Requests = checkpoint.Of(Requests);
        checkpoint.List(_changes, change => (checkpoint.Of(change.Cycle), checkpoint.Of(change.Choice)));
    }

    /// <summary>The stretches of uninterrupted request: first cycle, and the cycle after the last.</summary>
    public IEnumerable<(int From, int Until)> Stretches(int end)
    {
        var from = -1;
        foreach (var (cycle, choice) in _changes)
        {
            if (choice >= 0 && from < 0) from = cycle;
            if (choice >= 0 || from < 0) continue;
            if (cycle > from) yield return (from, cycle);
            from = -1;
        }

        if (from >= 0 && end > from) yield return (from, end);
    }

    /// <summary>The end of the stretch that holds a cycle: the cycle after its last.</summary>
    public int EndOf(int cycle, int end)
    {
        foreach (var (from, until) in Stretches(end))
            if (from <= cycle && cycle < until) return until;
        return end;
    }

    /// <summary>The choice at each cycle from one on; ask in rising order.</summary>
    public Func<int, int> From(int start)
    {
        var k = 0;
        var choice = -1;
        return cycle =>
        {
            while (k < _changes.Count && _changes[k].Cycle <= cycle) choice = _changes[k++].Choice;
            return choice;
        };
    }
}
