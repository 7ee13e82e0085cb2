namespace MonitorSim.Plans;

/// <summary>Each stop that a reaction, a request or a group can demand of an axis must be defined there.</summary>
internal static class DemandChecks
{
    private sealed record Demand(string Stop, string Axis, string Source);

    public static void Check(Plan plan, List<Finding> findings)
    {
        foreach (var axes in Groups(plan))
        {
            var demands = axes.SelectMany(name => Of(name, plan.Axes[name])).ToList();
            foreach (var name in axes)
            {
                var axis = plan.Axes[name];
                foreach (var demand in demands.DistinctBy(demand => demand.Stop).Where(demand => demand.Stop != "STO" && !PlanNames.IsDefined(axis, demand.Stop)))
                {
                    // The axis's own demand explains more than one of its group.
                    var shown = demands.Find(other => other.Stop == demand.Stop && other.Axis == name) ?? demand;
                    var spread = shown.Axis == name ? "" : $" of axis '{shown.Axis}' in its group";
                    findings.Add(new(PlanPath.Root.Member("axes").Member(name).Member("stops").Member(shown.Stop),
                        $"{name}: {shown.Stop} is not defined, but {shown.Source}{spread} can demand it", $"add {shown.Stop} to the stops of '{name}'"));
                }
            }
        }
    }

    /// <summary>The axes that stop together; groups with a common member are one.</summary>
    private static List<List<string>> Groups(Plan plan)
    {
        var groups = plan.Axes.Where(axis => axis.Value is not null).Select(axis => new List<string> { axis.Key }).ToList();
        foreach (var members in plan.Groups.Values)
        {
            if (members is null) continue;
            var joined = groups.Where(group => group.Any(axis => members.Contains(axis, StringComparer.Ordinal))).ToList();
            if (joined.Count < 2) continue;
            groups.RemoveAll(joined.Contains);
            groups.Add([.. joined.SelectMany(group => group)]);
        }

        return groups;
    }

    private static IEnumerable<Demand> Of(string name, AxisPlan axis)
    {
        foreach (var monitor in axis.Monitors)
        {
            if (monitor is null or UnknownMonitor || PlanType.Of(monitor.GetType()).Output is { CanTrip: false }) continue;
            if (Stop(monitor.Reaction ?? monitor.DefaultReaction) is { } stop) yield return new(stop, name, $"monitor '{monitor.Name}'");
        }

        foreach (var (kind, channel) in ChannelChecks.Of(axis))
        {
            if (channel?.Second is { } second && Stop(second.Reaction ?? Reaction.Stop0) is { } stop)
                yield return new(stop, name, $"'{Choice.Name(kind)} two channels'");
        }

        if (axis.Stops.Ss1?.Request is not null) yield return new("SS1", name, "a request");
        if (axis.Stops.Ss2?.Request is not null) yield return new("SS2", name, "a request");
        if (axis.Stops.Sos?.Request is not null) yield return new("SOS", name, "a request");
    }

    private static string? Stop(Reaction reaction) => reaction switch
    {
        Reaction.Stop0 => "STO", Reaction.Stop1 => "SS1", Reaction.Stop2 => "SS2", _ => null,
    };
}
