using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim.Stops;

/// <summary>Turns trips and requests into states: within a group every demand acts on every axis at the same cycle.</summary>
internal sealed class Reactor
{
    private readonly IReadOnlyDictionary<string, AxisReactor> _axes;
    private readonly IReadOnlyDictionary<string, IReadOnlyList<string>> _groupOf;
    private readonly HashSet<string> _present = [];

    public Reactor(IReadOnlyDictionary<string, AxisReactor> axes, IEnumerable<IReadOnlyList<string>> groups)
    {
        _axes = axes;
        var groupOf = axes.Keys.ToDictionary(axis => axis, axis => new List<string> { axis });
        foreach (var group in groups)
        {
            // Groups with a common member are one.
            var union = group.SelectMany(axis => groupOf[axis]).Distinct().Order(StringComparer.Ordinal).ToList();
            foreach (var axis in union) groupOf[axis] = union;
        }

        _groupOf = groupOf.ToDictionary(pair => pair.Key, pair => (IReadOnlyList<string>)pair.Value);
    }

    public IReadOnlyDictionary<string, AxisReactor> Axes => _axes;

    public IReadOnlyList<string> GroupOf(string axis) => _groupOf[axis];

    /// <summary>Takes the stop requests of a cycle and ends the causes of those that have gone.</summary>
    /// <param name="requests">Axis, stop and whether it is requested, for every stop with a request.</param>
    public void BeginCycle(IEnumerable<(string Axis, string Stop, bool Holds)> requests)
    {
        _present.Clear();
        foreach (var (axis, stop, holds) in requests)
            if (holds) _present.Add($"{axis}.{stop}");
        foreach (var axis in _axes.Values)
        {
            axis.BeginCycle();
            axis.EndRequests(_present.Contains);
        }
    }

    /// <summary>Whether an acknowledgement acts on an axis: none of its group may still be stopping.</summary>
    public bool CanAcknowledge(string axis) => !GroupOf(axis).Any(member => _axes[member].IsStopping);

    /// <summary>Whether an acknowledgement opens latched trips of an axis and ends their causes: no stop request may be present in its group.</summary>
    public bool CanOpenTrips(string axis) => !GroupOf(axis).Any(member =>
        _present.Contains($"{member}.STO") || _present.Contains($"{member}.SS1") || _present.Contains($"{member}.SS2"));

    /// <summary>Ends the causes that an acknowledgement ends.</summary>
    public void Acknowledge(string axis) => _axes[axis].Acknowledge(_present.Contains, CanOpenTrips(axis));

    /// <summary>Lets the stops under way compare, then trips and requests act, then stops that begin compare and stops end, until nothing changes any more.</summary>
    public void Act(in Cycle cycle, List<TripNote> notes, Func<MonitorRun, bool> isInvalid)
    {
        foreach (var axis in _axes.Values) axis.CompareStops(cycle, isInvalid, notes);
        var demands = new List<(string Axis, Cause Cause)>();
        foreach (var note in notes) AddDemand(demands, note);
        foreach (var source in _present.Order(StringComparer.Ordinal))
        {
            var dot = source.LastIndexOf('.');
            var cause = new Cause(source, DemandOf(source[(dot + 1)..]), IsRequest: true);
            if (!_axes[source[..dot]].Causes.Contains(cause)) demands.Add((source[..dot], cause));
        }

        Spread(demands, cycle);
        for (var changed = true; changed;)
        {
            changed = false;
            var before = notes.Count;
            foreach (var axis in _axes.Values) changed |= axis.CompareStops(cycle, isInvalid, notes);
            demands.Clear();
            foreach (var note in notes.Skip(before)) AddDemand(demands, note);
            Spread(demands, cycle);
            foreach (var axis in _axes.Values) changed |= axis.EndStop(cycle);
        }
    }

    private static AxisState DemandOf(string stop) => stop switch
    {
        "STO" => AxisState.TorqueOff,
        "SS1" => AxisState.StoppingToOff,
        "SS2" => AxisState.StoppingToHold,
        _ => AxisState.Holding,
    };

    private static void AddDemand(List<(string, Cause)> demands, TripNote note)
    {
        if (Cause.StateOf(note.Monitor.Reaction) is { } state)
            demands.Add((note.Monitor.Axis, new(note.Monitor.FullName, state, IsRequest: false)));
    }

    private void Spread(List<(string Axis, Cause Cause)> demands, in Cycle cycle)
    {
        foreach (var (name, axis) in _axes)
        {
            var own = demands.Where(demand => GroupOf(demand.Axis).Contains(name)).Select(demand => demand.Cause).ToList();
            if (own.Count > 0) axis.Take(own, cycle);
        }
    }
}
