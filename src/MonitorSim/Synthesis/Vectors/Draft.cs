namespace MonitorSim.Synthesis.Vectors;

/// <summary>A vector with what is meant by it, before a replay has confirmed that.</summary>
/// <param name="Name">What it is about, in a few words.</param>
/// <param name="Says">What happens and what must come of it, in a sentence or two.</param>
/// <param name="Script">Signals and channels.</param>
internal sealed record Draft(string Name, string Says, Script Script)
{
    /// <summary>The stop that has to begin, and the cycle at which; null where the vector is about none.</summary>
    public (string Axis, int Cycle)? Begins { get; init; }

    /// <summary>A monitor whose trips belong to what is meant without being looked at.</summary>
    public (string Axis, string Monitor)? CalledBy { get; init; }

    /// <summary>The branches that it meets.</summary>
    public List<Branch> Meets { get; } = [];

    /// <summary>All trips that are meant, of the monitors named in <see cref="Meant"/>.</summary>
    public List<(string Axis, string Monitor, string Side, int Cycle)> Trips { get; } = [];

    /// <summary>The monitors whose trips are meant to be those of <see cref="Trips"/> and no others.</summary>
    public HashSet<(string Axis, string Monitor)> Meant { get; } = [];

    /// <summary>Whether it is about what other monitors of the group can change.</summary>
    public bool IsOfStates => Begins is not null || States.Count > 0;

    /// <summary>The side that it is about.</summary>
    public string? Side { get; private set; }

    /// <summary>States that are meant, after a cycle.</summary>
    public List<(string Axis, int Cycle, AxisState State)> States { get; } = [];

    /// <summary>Outputs that are meant, after a cycle.</summary>
    public List<(string Axis, string Monitor, int Cycle, bool On)> Outputs { get; } = [];

    public Draft Meet(params IEnumerable<Branch> branches)
    {
        Meets.AddRange(branches);
        return this;
    }

    /// <summary>Means that a monitor trips at these cycles, each on that side, and never else.</summary>
    public Draft Mean(string axis, string monitor, string side, params IEnumerable<int> cycles)
    {
        Meant.Add((axis, monitor));
        Side = side;
        Trips.AddRange(cycles.Select(cycle => (axis, monitor, side, cycle)));
        return this;
    }
}
