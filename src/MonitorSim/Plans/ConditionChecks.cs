namespace MonitorSim.Plans;

/// <summary>Every name in an expression must be known.</summary>
internal static class ConditionChecks
{
    public static void Check(PlanPath path, Condition condition, PlanNames names, List<Finding> findings) => Visit(condition.Root, path, names, findings);

    private static void Visit(Expression expression, PlanPath path, PlanNames names, List<Finding> findings)
    {
        switch (expression)
        {
            case Expression.Signal signal when !names.Signals.Contains(signal.Name, StringComparer.Ordinal):
                findings.Add(new(path, $"{path.Name}: unknown signal '{signal.Name}'", AdviceOnSignal(signal.Name, names)));
                break;
            case Expression.Monitor monitor when Axis(monitor.Axis, path, names, findings) is { } known && !known.Contains(monitor.Name, StringComparer.Ordinal):
                findings.Add(new(path, $"{path.Name}: axis '{monitor.Axis}' has no monitor '{monitor.Name}'", ClosestName.Advice(monitor.Name, known, "monitor")));
                break;
            case Expression.State state: Axis(state.Axis, path, names, findings); break;
            case Expression.Not not: Visit(not.Operand, path, names, findings); break;
            case Expression.And and: Visit(and.Left, path, names, findings); Visit(and.Right, path, names, findings); break;
            case Expression.Or or: Visit(or.Left, path, names, findings); Visit(or.Right, path, names, findings); break;
        }
    }

    private static IReadOnlyCollection<string>? Axis(string axis, PlanPath path, PlanNames names, List<Finding> findings)
    {
        var known = names.Of(axis);
        if (known is null) findings.Add(new(path, $"{path.Name}: unknown axis '{axis}'", ClosestName.Advice(axis, names.Axes, "axis")));
        return known;
    }

    private static string AdviceOnSignal(string name, PlanNames names)
    {
        foreach (var axis in names.Axes)
        {
            if (names.Of(axis)!.Contains(name, StringComparer.Ordinal))
                return $"a monitor is written {ConditionParser.Quote(axis)}.{ConditionParser.Quote(name)}";
        }

        return ClosestName.Advice(name, names.Signals, "signal");
    }
}
