using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What is known of outputs, trips and states in a vector, so that conditions that read them can be decided.</summary>
/// <remarks>At rest every axis runs and nothing has tripped. At most one thing is brought about before: what follows from it for its own group is unknown, but for
/// the states after a stop 0.</remarks>
internal sealed class Circumstance
{
    private readonly Plan _plan;
    private readonly Expression? _established;
    private readonly HashSet<string> _disturbed = [];
    private readonly AxisState? _disturbedState;

    /// <param name="bench">The plan.</param>
    /// <param name="established">The trip, output or state that has been brought about; null: none.</param>
    public Circumstance(Bench bench, Expression? established = null)
    {
        (_plan, _established) = (bench.Plan, established);
        if (established is Expression.State state) _disturbed.UnionWith(bench.GroupOf(state.Axis));
        if (established is not Expression.Monitor monitor || IsOutput(monitor)) return;
        var tripped = PlanOf(monitor);
        var reaction = tripped is null ? Reaction.Stop0 : tripped.Reaction ?? tripped.DefaultReaction;
        if (reaction != Reaction.None) _disturbed.UnionWith(bench.GroupOf(monitor.Axis));
        if (reaction == Reaction.Stop0) _disturbedState = AxisState.TorqueOff;
    }

    /// <summary>The value of <c>axis.monitor</c> or <c>axis.state == X</c>; null where it is not known.</summary>
    public bool? Of(Expression atom) => atom switch
    {
        Expression.Monitor monitor => monitor == _established ? true : IsOutput(monitor) || _disturbed.Contains(monitor.Axis) ? null : false,
        Expression.State state => StateOf(state.Axis) is { } now ? now == state.Value == state.Equal : null,
        _ => null,
    };

    private AxisState? StateOf(string axis) => _established is Expression.State state && state.Axis == axis ? state.Value
        : _disturbed.Contains(axis) ? _disturbedState : AxisState.Running;

    /// <summary>Whether <c>axis.monitor</c> is an output, and not a latched trip.</summary>
    public bool IsOutput(Expression.Monitor monitor) => PlanOf(monitor) is { } plan && OutputEdge.Of(_plan.Axes[monitor.Axis], plan).Any();

    private Monitors.MonitorPlan? PlanOf(Expression.Monitor monitor) => _plan.Axes[monitor.Axis].Monitors.FirstOrDefault(one => one.Name == monitor.Name);
}
