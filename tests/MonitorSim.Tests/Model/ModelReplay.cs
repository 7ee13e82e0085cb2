using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>The whole replay, literally: cycle by cycle, every monitor, then the reactor.</summary>
internal sealed class ModelReplay : IModelWorld
{
    private readonly Dictionary<string, bool[]> _signals;
    private readonly List<List<ModelAxis>> _groups = [];
    private readonly string? _acknowledge;
    private int _now;

    public ModelReplay(string plan, string csv)
    {
        Plan = JsonDocument.Parse(plan).RootElement;
        Trace = new(Plan, csv);
        Clock = new(Plan, Trace);
        _signals = ModelSignals.Read(Plan, Trace);
        _acknowledge = Plan.Field("acknowledge")?.Text("signal");
        IsPress = Plan.Field("acknowledge")?.Text("on") == "press";
        Axes = [.. Plan.Field("axes")!.Value.EnumerateObject().Select(axis => new ModelAxis(axis.Name, axis.Value, Trace, Clock))];
        Group();
        for (_now = 0; _now < Clock.Count; _now++) Step(_now);
    }

    public JsonElement Plan { get; }
    public ModelTrace Trace { get; }
    public ModelClock Clock { get; }
    public List<ModelAxis> Axes { get; }

    /// <summary>Whether an acknowledgement counts on the press.</summary>
    public bool IsPress { get; }

    /// <summary>How often acknowledgements opened a latch.</summary>
    public int OpenedLatches { get; private set; }

    /// <summary>In how many cycles monitors were in each state.</summary>
    public Dictionary<string, int> MonitorStates { get; } = [];

    bool IModelWorld.Signal(string name) => Signal(name, _now);

    bool IModelWorld.Output(string axis, string monitor) =>
        Axes.Single(a => a.Name == axis).Watches.Single(watch => watch.Chain.Monitor.Name == monitor).Seen;

    string IModelWorld.State(string axis) => Axes.Single(a => a.Name == axis).Seen.ToString();

    /// <summary>A signal at a cycle.</summary>
    public bool Signal(string name, int n) => _signals[name][Clock.Samples[n]];

    // Groups with a common member are one; an axis of no group is a group of its own.
    private void Group()
    {
        foreach (var axis in Axes) _groups.Add([axis]);
        if (Plan.Field("groups") is not { } groups) return;
        foreach (var members in groups.EnumerateObject().Select(group => group.Value.EnumerateArray().Select(name => name.GetString()).ToList()))
        {
            var touched = _groups.Where(group => group.Any(axis => members.Contains(axis.Name))).ToList();
            foreach (var group in touched) _groups.Remove(group);
            _groups.Add([.. touched.SelectMany(group => group)]);
        }
    }

    private void Step(int n)
    {
        foreach (var group in _groups) EndCauses(group, n);
        var demands = Axes.ToDictionary(axis => axis, axis => StepMonitors(axis, n));
        foreach (var group in _groups) React(group, demands, n);
        foreach (var watch in Axes.SelectMany(axis => axis.Watches))
        {
            watch.Output?.Step(Clock.Times[n], Clock.Samples[n], watch.Chain.IsWatching || watch.Chain.IsTripped);
            MonitorStates[watch.Chain.State] = MonitorStates.GetValueOrDefault(watch.Chain.State) + 1;
            watch.Seen = watch.Output?.IsOn ?? watch.Chain.IsTripped;
        }

        foreach (var axis in Axes) axis.Seen = axis.State;
    }

    private List<ModelCause> Requests(ModelAxis axis) =>
        [.. axis.Stops.Requests.Where(r => ModelExpression.Evaluate(r.Value, this)).Select(r => new ModelCause(axis.Name, r.Key.ToString(), r.Key, true))];

    private void EndCauses(List<ModelAxis> group, int n)
    {
        var present = group.SelectMany(Requests).ToList();
        foreach (var axis in group)
        {
            if (axis.State is ModelState.StoppingToOff or ModelState.TorqueOff) continue;
            axis.Causes.RemoveAll(cause => cause.IsRequest && !present.Contains(cause));
            axis.Settle(n);
        }

        if (!IsAcknowledged(n) || group.Any(axis => axis.IsStopping)) return;
        var isStopRequested = present.Any(cause => cause.Demand != Stop.SOS);
        foreach (var axis in group)
        {
            if (!isStopRequested)
                foreach (var chain in axis.Chains.Where(chain => chain.IsTripped))
                {
                    chain.Acknowledge();
                    OpenedLatches++;
                }
            axis.Causes.RemoveAll(cause => cause.IsRequest ? !present.Contains(cause) : !isStopRequested);
            axis.Settle(n);
        }
    }

    private bool IsAcknowledged(int n) =>
        _acknowledge is not null && n > 0 && Signal(_acknowledge, n) == IsPress && Signal(_acknowledge, n - 1) != IsPress;

    // Requests that have come, and trips.
    private List<ModelCause> StepMonitors(ModelAxis axis, int n)
    {
        var demands = Requests(axis).Where(request => !axis.Causes.Contains(request)).ToList();
        foreach (var watch in axis.Watches)
        {
            var isRequested = ModelExpression.Evaluate(watch.Request, this);
            var chosen = watch.Whens is null ? 0 : watch.Whens.ToList().FindIndex(when => ModelExpression.Evaluate(when, this));
            demands.AddRange(DemandsOf(watch.Chain.Update(n, isRequested && chosen >= 0, chosen)));
        }

        demands.AddRange(DemandsOf(axis.StepStops(n)));
        return demands;
    }

    private static IEnumerable<ModelCause> DemandsOf(IEnumerable<ModelTrip> trips) => trips.Where(trip => trip.Monitor.Reaction is not null)
        .Select(trip => new ModelCause(trip.Monitor.Axis, trip.Monitor.Name, trip.Monitor.Reaction!.Value, false));

    // Demands act on the whole group, stops begin, are compared and may end, until nothing changes any more. A change names every demand that took
    // over on the axis in this cycle.
    private static void React(List<ModelAxis> group, Dictionary<ModelAxis, List<ModelCause>> demands, int n)
    {
        var acting = group.ToDictionary(axis => axis, _ => new SortedSet<string>(StringComparer.Ordinal));
        var fresh = group.SelectMany(axis => demands[axis]).ToList();
        do
        {
            var next = new List<ModelCause>();
            foreach (var axis in group.Where(_ => fresh.Count > 0))
            {
                axis.Causes.AddRange(fresh.Where(cause => !axis.Causes.Contains(cause)));
                var worst = fresh.Max(cause => cause.Demand);
                if ((int)worst <= (int)axis.State || worst == Stop.SS2 && axis.State == ModelState.Holding) continue;
                acting[axis].UnionWith(fresh.Where(cause => cause.Demand == worst).Select(cause => cause.ToString()));
                next.AddRange(DemandsOf(axis.TakeOver(n, worst, string.Join(", ", acting[axis]))));
            }

            if (next.Count == 0)
                foreach (var axis in group)
                    if (axis.TryEnd(n, string.Join(", ", acting[axis])) is { } trips) next.AddRange(DemandsOf(trips));
            fresh = next;
        }
        while (fresh.Count > 0);
    }
}
