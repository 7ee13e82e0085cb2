namespace MonitorSim.Plans;

/// <summary>Each expect line says one thing, of something that is there.</summary>
internal static class ExpectChecks
{
    public static void Check(Plan plan, PlanNames names, List<Finding> findings)
    {
        for (var i = 0; i < plan.Expect.Count; i++)
            if (plan.Expect[i] is { } line) Line(PlanPath.Root.Member("expect").Item(i), line, names, findings);
    }

    private static void Line(PlanPath path, ExpectPlan line, PlanNames names, List<Finding> findings)
    {
        var (trips, tripsWith, state) = (path.Member("trips"), path.Member("tripsWith"), path.Member("state"));
        var said = new (PlanPath Path, bool IsSet)[] { (trips, line.Trips is not null), (tripsWith, line.TripsWith is not null), (state, line.State is not null) }
            .Where(one => one.IsSet).ToList();
        if (said.Count == 0)
            findings.Add(new(path, "expect: the line expects nothing", "write trips, tripsWith or state") { Concerns = [trips, tripsWith, state] });
        else if (said.Count > 1)
            findings.Add(new(said[1].Path, $"expect: {said[0].Path.Name} and {said[1].Path.Name} are two expectations", "write two lines"));

        Only(path.Member("between"), line.Between is not null, trips, line.Trips is not null, findings);
        Only(path.Member("within"), line.Within is not null, tripsWith, line.TripsWith is not null, findings);
        Only(path.Member("before"), line.Before is not null, state, line.State is not null, findings);
        PlanHeadChecks.Pair(path.Member("between"), line.Between, "from and until", findings);

        var monitor = path.Member("monitor");
        if (line.State is null && said.Count > 0 && line.Monitor is null)
            findings.Add(new(monitor, "expect: the line names no monitor", "add a monitor, or \"*\" for any"));
        if (line.State is not null && line.Monitor is not null && said.Count == 1)
            findings.Add(new(monitor, "monitor: states are of the axis", "leave it out"));
        if (line.TripsWith is { } signal && !names.Signals.Contains(signal, StringComparer.Ordinal))
            findings.Add(new(tripsWith, $"tripsWith: unknown signal '{signal}'", ClosestName.Advice(signal, names.Signals, "signal")));
        if (line.Axis is not { } axis) return;
        if (names.Of(axis) is not { } known)
            findings.Add(new(path.Member("axis"), $"axis: unknown axis '{axis}'", ClosestName.Advice(axis, names.Axes, "axis")));
        else if (line.Monitor is { } name && name != "*" && !known.Contains(name, StringComparer.Ordinal))
            findings.Add(new(monitor, $"monitor: axis '{axis}' has no monitor '{name}'", ClosestName.Advice(name, known, "monitor")));
    }

    private static void Only(PlanPath path, bool isSet, PlanPath with, bool withIsSet, List<Finding> findings)
    {
        if (isSet && !withIsSet) findings.Add(new(path, $"{path.Name}: it belongs to {with.Name}", $"add {with.Name}, or leave it out") { Concerns = [with] });
    }
}
