using MonitorSim.Plans;

namespace MonitorSim.Signals;

/// <summary>What an expression may look at.</summary>
internal interface IConditionView
{
    /// <summary>A signal's value at the sample that the cycle sees.</summary>
    bool Signal(string name);

    /// <summary>The output or latched trip of a monitor, of the cycle before.</summary>
    bool Monitor(string axis, string monitor);

    /// <summary>The state of an axis, of the cycle before.</summary>
    AxisState State(string axis);
}

/// <summary>Evaluates the expressions of a plan.</summary>
internal static class ConditionValue
{
    public static bool Holds(this Expression expression, IConditionView view) => expression switch
    {
        Expression.Constant constant => constant.Value,
        Expression.Signal signal => view.Signal(signal.Name),
        Expression.Monitor monitor => view.Monitor(monitor.Axis, monitor.Name),
        Expression.State state => view.State(state.Axis) == state.Value == state.Equal,
        Expression.Not not => !not.Operand.Holds(view),
        Expression.And and => and.Left.Holds(view) && and.Right.Holds(view),
        Expression.Or or => or.Left.Holds(view) || or.Right.Holds(view),
        _ => throw new ArgumentOutOfRangeException(nameof(expression), expression, "an unknown kind of expression"),
    };

    /// <summary>Whether the expression looks at an output or a state, which only the replay can tell.</summary>
    public static bool DependsOnReplay(this Expression expression) => expression switch
    {
        Expression.Monitor or Expression.State => true,
        Expression.Not not => not.Operand.DependsOnReplay(),
        Expression.And and => and.Left.DependsOnReplay() || and.Right.DependsOnReplay(),
        Expression.Or or => or.Left.DependsOnReplay() || or.Right.DependsOnReplay(),
        _ => false,
    };
}
