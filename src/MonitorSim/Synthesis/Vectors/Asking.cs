using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The settings at which a monitor is asked for and is not.</summary>
/// <param name="Yes">Asked for; null where no setting of signals makes it so.</param>
/// <param name="No">Not asked for; null where it always is.</param>
/// <param name="Why">What cannot be and why; empty where both can.</param>
internal sealed record Asking(Setting? Yes, Setting? No, string Why);

/// <summary>Finds settings for the requests of a plan.</summary>
internal sealed class Requests
{
    private readonly SignalBoard _board;
    private readonly List<Expression> _stops = [], _monitors = [];
    private readonly string? _acknowledge;

    public Requests(Plan plan, SignalBoard board)
    {
        _board = board;
        _acknowledge = plan.Acknowledge?.Signal;
        foreach (var axis in plan.Axes.Values)
        {
            var stops = axis.Stops;
            _stops.AddRange(new[] { stops.Sto?.Request, stops.Ss1?.Request, stops.Ss2?.Request, stops.Sos?.Request }.OfType<Condition>().Select(request => request.Root));
            _monitors.AddRange(axis.Monitors.Select(monitor => monitor.Request).OfType<Condition>().Select(request => request.Root));
        }

        Quiet = board.Find(_stops, setting => _stops.TrueForAll(stop => board.Holds(setting, stop) != true), Cost, board.Quiet) ?? board.Quiet;
    }

    /// <summary>Nothing that stops is asked for, if that can be.</summary>
    public Setting Quiet { get; }

    /// <summary>The settings for a monitor, or for one of its levels.</summary>
    public Asking Of(MonitorPlan monitor, int? level = null)
    {
        var request = monitor.Request?.Root ?? new Expression.Constant(true);
        var levels = monitor is Sls { Levels: { } all } ? all.Select(one => one.When.Root).ToList() : [];
        bool? Chosen(Setting setting)
        {
            if (_board.Holds(setting, request) is not true) return _board.Holds(setting, request);
            for (var k = 0; k < levels.Count; k++)
                if (_board.Holds(setting, levels[k]) is not false) return _board.Holds(setting, levels[k]) is null ? null : level is null || level == k;
            return levels.Count == 0;
        }

        bool? Asked(Setting setting) => level is null ? Chosen(setting) : And(_board.Holds(setting, request), Any(levels.Select(when => _board.Holds(setting, when))));
        List<Expression> involved = [request, .. levels, .. _stops];
        var yes = Find(involved, setting => Chosen(setting) == true, Quiet);
        var no = Find(involved, setting => Asked(setting) == false, yes ?? Quiet);
        return new(yes, no, yes is null ? Unasked(monitor, level) : no is null ? "it is asked for at every setting of the signals" : "");
    }

    /// <summary>The settings for the request of a stop.</summary>
    public Asking Of(Condition request)
    {
        var root = request.Root;
        var others = _stops.Where(stop => stop != root).ToList();
        var yes = _board.Find([root, .. others], setting => _board.Holds(setting, root) == true, setting => Cost(setting) + 10 * others.Count(stop => _board.Holds(setting, stop) != false), Quiet);
        var no = Find([root, .. _stops], setting => _board.Holds(setting, root) == false, yes ?? Quiet);
        return new(yes, no, yes is null ? $"no setting of the signals makes '{request}' hold, whatever outputs and states are" : no is null ? $"'{request}' holds at every setting of the signals" : "");
    }

    private Setting? Find(IEnumerable<Expression> involved, Func<Setting, bool> must, Setting near) =>
        _board.Find(involved, must, setting => Cost(setting) + 100 * _stops.Count(stop => _board.Holds(setting, stop) != false), near);

    private int Cost(Setting setting) => _monitors.Count(request => _board.Holds(setting, request) != false)
        + (_acknowledge is null || _board.Signal(setting, _acknowledge) == _board.Signal(_board.Quiet, _acknowledge) ? 0 : 3);

    private static string Unasked(MonitorPlan monitor, int? level) => level is { } k
        ? FormattableString.Invariant($"no setting of the signals chooses level {k}, whatever outputs and states are")
        : $"no setting of the signals makes '{monitor.Request}' hold, whatever outputs and states are";

    private static bool? And(bool? a, bool? b) => a == false || b == false ? false : a == true && b == true ? true : null;

    private static bool? Any(IEnumerable<bool?> values) => values.Aggregate((bool?)false, (a, b) => a == true || b == true ? true : a == false && b == false ? false : null);
}
