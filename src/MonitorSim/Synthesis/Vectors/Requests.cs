using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Finds settings for the requests of a plan.</summary>
internal sealed class Requests
{
    private readonly SignalBoard _board;
    private readonly List<Expression> _stops = [], _monitors = [];
    private readonly string? _acknowledge;
    private readonly Circumstance _rest;

    public Requests(Bench bench)
    {
        var (plan, board) = (bench.Plan, bench.Board);
        (_board, _rest) = (board, new(bench));
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

    /// <summary>The settings for a monitor, or for one of its levels: such that the signals alone decide, else such that it is asked for while everything is at rest.</summary>
    public Asking Of(MonitorPlan monitor, int? level = null)
    {
        var decided = Of(monitor, level, null, []);
        return decided.Yes is null && Of(monitor, level, _rest, []) is { Yes: not null } resting ? resting : decided;
    }

    /// <summary>What its request and its levels say.</summary>
    public static IReadOnlyList<Expression> Conditions(MonitorPlan monitor) =>
        [monitor.Request?.Root ?? new Expression.Constant(true), .. monitor is Sls { Levels: { } all } ? all.Select(one => one.When.Root) : []];

    /// <summary>The settings for a monitor, or for one of its levels.</summary>
    /// <param name="monitor">The monitor.</param>
    /// <param name="level">The level, or null.</param>
    /// <param name="given">What is known of outputs, trips and states; null: nothing.</param>
    /// <param name="kept">Conditions that have to hold at every setting.</param>
    public Asking Of(MonitorPlan monitor, int? level, Circumstance? given, IReadOnlyList<Expression> kept)
    {
        var conditions = Conditions(monitor);
        var (request, levels) = (conditions[0], conditions.Skip(1).ToList());
        bool Keeps(Setting setting) => kept.All(one => _board.Holds(setting, one, given) == true);
        bool? Chosen(Setting setting)
        {
            if (_board.Holds(setting, request, given) is not true) return _board.Holds(setting, request, given);
            for (var k = 0; k < levels.Count; k++)
                if (_board.Holds(setting, levels[k], given) is not false) return _board.Holds(setting, levels[k], given) is null ? null : level is null || level == k;
            return levels.Count == 0;
        }

        bool? Asked(Setting setting) => level is null ? Chosen(setting) : And(_board.Holds(setting, request, given), Any(levels.Select(when => _board.Holds(setting, when, given))));
        List<Expression> involved = [.. conditions, .. kept, .. _stops];
        var yes = Find(involved, setting => Chosen(setting) == true && Keeps(setting), Quiet);
        var no = Find(involved, setting => Asked(setting) == false && Keeps(setting), yes ?? Quiet);
        var mayBe = yes is not null || Find(involved, setting => Chosen(setting) is null, Quiet) is not null;
        return new(yes, no, yes is null ? Unasked(monitor, level, mayBe) : no is null ? "it is asked for at every setting of the signals" : "")
            { Assumption = given is null ? null : $"it is asked for by '{Text(monitor, level)}', and the outputs, trips and states in it do not stay as the vector needs them" };
    }

    /// <summary>The settings for the request of a stop.</summary>
    public Asking Of(Condition request)
    {
        var root = request.Root;
        var others = _stops.Where(stop => stop != root).ToList();
        var yes = _board.Find([root, .. others], setting => _board.Holds(setting, root) == true, setting => Cost(setting) + 10 * others.Count(stop => _board.Holds(setting, stop) != false), Quiet);
        var no = Find([root, .. _stops], setting => _board.Holds(setting, root) == false, yes ?? Quiet);
        var mayBe = yes is not null || _board.Find([root], setting => _board.Holds(setting, root) is null, Cost, Quiet) is not null;
        return new(yes, no, yes is null ? Unmet($"makes '{request}' hold", mayBe) : no is null ? $"'{request}' holds at every setting of the signals" : "");
    }

    private Setting? Find(IEnumerable<Expression> involved, Func<Setting, bool> must, Setting near) =>
        _board.Find(involved, must, setting => Cost(setting) + 100 * _stops.Count(stop => _board.Holds(setting, stop) != false), near);

    private int Cost(Setting setting) => _monitors.Count(request => _board.Holds(setting, request) != false)
        + (_acknowledge is null || _board.Signal(setting, _acknowledge) == _board.Signal(_board.Quiet, _acknowledge) ? 0 : 3);

    private static string Text(MonitorPlan monitor, int? level) => level is { } k ? ((Sls)monitor).Levels![k].When.Text : monitor.Request?.Text ?? "always";

    private static string Unasked(MonitorPlan monitor, int? level, bool mayBe) => Unmet(level is { } k ? FormattableString.Invariant($"chooses level {k}") : $"makes '{monitor.Request}' hold", mayBe);

    private static string Unmet(string what, bool mayBe) => mayBe
        ? $"no setting of the signals {what} by itself, and no way is known to bring about the outputs, trips and states that it needs" : $"no setting of the signals {what}, whatever outputs and states are";

    private static bool? And(bool? a, bool? b) => a == false || b == false ? false : a == true && b == true ? true : null;

    private static bool? Any(IEnumerable<bool?> values) => values.Aggregate((bool?)false, (a, b) => a == true || b == true ? true : a == false && b == false ? false : null);
}
