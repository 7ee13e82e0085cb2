using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Ways to ask for a monitor whose request reads a trip, an output or a state: that is brought about first.</summary>
internal sealed class Preludes(Bench bench)
{
    private const int MostWays = 4;

    /// <summary>The subject in every way that it can be asked for; as it is where signals alone will do, or where there is no way.</summary>
    /// <param name="subject">A monitor and how signals ask for it.</param>
    /// <param name="monitor">The same in the plan.</param>
    /// <param name="level">The level, or null.</param>
    public IReadOnlyList<Subject> Of(Subject subject, MonitorPlan monitor, int? level)
    {
        if (subject.Calling.Unreachable is null) return [subject];
        List<Subject> ways = [.. Ways(monitor, level).Take(MostWays).Select(calling => subject with { Calling = calling })];
        return ways.Count > 0 ? ways : [subject];
    }

    /// <summary>The same of a monitor with an output.</summary>
    public IReadOnlyList<Calling> Callings(MonitorPlan monitor)
    {
        var plain = new SignalCalling(bench.Requests.Of(monitor));
        if (plain.Unreachable is null) return [plain];
        List<Calling> ways = [.. Ways(monitor, null).Take(MostWays)];
        return ways.Count > 0 ? ways : [plain];
    }

    private IEnumerable<Calling> Ways(MonitorPlan monitor, int? level)
    {
        foreach (var atom in Requests.Conditions(monitor).SelectMany(Atoms).SelectMany(Wanted).Distinct())
        {
            var given = new Circumstance(bench, atom);
            if (bench.Requests.Of(monitor, level, given, []).Yes is null) continue;
            foreach (var (prelude, kept) in To(atom, given).Where(way => way.Prelude.Unreachable is null))
            {
                var asking = bench.Requests.Of(monitor, level, given, kept);
                if (asking.Yes is not null) yield return new PreludedCalling(prelude, asking);
            }
        }
    }

    /// <summary>What brings it about, and the conditions that must go on holding for it to stay.</summary>
    private IEnumerable<(Calling Prelude, IReadOnlyList<Expression> Kept)> To(Expression atom, Circumstance given)
    {
        switch (atom)
        {
            case Expression.Monitor output when given.IsOutput(output):
                var (axis, monitor) = (bench.Plan.Axes[output.Axis], bench.Plan.Axes[output.Axis].Monitors.First(one => one.Name == output.Name));
                return OutputEdge.Of(axis, monitor).Select(edge => ((Calling)new OutputCalling(bench, output.Axis, monitor, edge), (IReadOnlyList<Expression>)(monitor.Request is { } request ? [request.Root] : [])));
            case Expression.Monitor tripped:
                return bench.Chains(tripped.Axis).Concat(bench.Chains(tripped.Axis, negative: true)).Where(chain => chain.Subject.Monitor == tripped.Name)
                    .Select(chain => ((Calling)new TripCalling(chain.Subject, chain.Lever), (IReadOnlyList<Expression>)[]));
            case Expression.State state when Stop(state.Value) is { } stop:
                return new Demands(bench).Ways(state.Axis, stop).Select(way => (way, Kept(state.Axis, way)));
            default:
                return [];
        }
    }

    /// <summary>Where no trip called for the state, it ends with its request.</summary>
    private IReadOnlyList<Expression> Kept(string axis, Calling way) => way.By is not null ? []
        : [.. new[] { bench.Plan.Axes[axis].Stops.Ss2?.Request, bench.Plan.Axes[axis].Stops.Sos?.Request }.OfType<Condition>().Select(request => request.Root).Take(1)];

    private static string? Stop(AxisState state) => state switch
    {
        AxisState.Holding => "SOS",
        AxisState.StoppingToHold => "SS2",
        AxisState.StoppingToOff => "SS1",
        AxisState.TorqueOff => "STO",
        _ => null,
    };

    private static IEnumerable<Expression> Atoms(Expression expression) => expression switch
    {
        Expression.Not not => Atoms(not.Operand),
        Expression.And and => Atoms(and.Left).Concat(Atoms(and.Right)),
        Expression.Or or => Atoms(or.Left).Concat(Atoms(or.Right)),
        Expression.Monitor or Expression.State => [expression],
        _ => [],
    };

    /// <summary>What may be brought about for it: not to run is to be off or to hold.</summary>
    private static IEnumerable<Expression> Wanted(Expression atom) => atom is not Expression.State state ? [atom]
        : (state.Value == AxisState.Running ? [AxisState.TorqueOff, AxisState.Holding] : new[] { state.Value }).Select(value => new Expression.State(state.Axis, value, Equal: true));
}
