namespace MonitorSim.Plans;

/// <summary>Everything that makes a plan an error, whether it was read or built in C#.</summary>
/// <remarks>What depends on the recording (columns, units that it states) is checked when the two meet.</remarks>
public static class PlanChecks
{
    /// <summary>All problems of a plan; empty where it can be replayed. The place is the path of a member, such as <c>axes.bridge.stops</c>.</summary>
    public static IReadOnlyList<Problem> Check(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. Findings(plan).Select(finding => finding.At(finding.Path.Text.Length == 0 ? "plan" : finding.Path.Text))];
    }

    /// <summary>Throws where a plan cannot be replayed.</summary>
    /// <exception cref="InputException">All problems of the plan.</exception>
    public static void Require(Plan plan)
    {
        var problems = Check(plan);
        if (problems.Count > 0) throw new InputException(problems);
    }

    /// <summary>All findings. A plan that was read with errors may lack required members: they are passed over.</summary>
    internal static IReadOnlyList<Finding> Findings(Plan plan)
    {
        var findings = new List<Finding>();
        PlanHeadChecks.Check(plan, findings);
        var names = new PlanNames(plan);
        foreach (var (name, axis) in plan.Axes)
        {
            if (axis is null) continue;
            var path = PlanPath.Root.Member("axes").Member(name);
            AxisChecks.Check(path, axis, plan, findings);
            ChannelChecks.Check(path, axis, findings);
            StopChecks.Check(path, axis, findings);
            MonitorChecks.Check(path, axis, findings);
        }

        DemandChecks.Check(plan, findings);
        ExpectChecks.Check(plan, names, findings);
        new MemberChecks(names, findings).Check(plan);
        return findings;
    }
}
