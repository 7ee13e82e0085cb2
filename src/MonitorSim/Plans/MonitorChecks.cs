using Fractions;
using MonitorSim.Monitors;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>Names, channels, ranges and hysteresis of the monitors of an axis.</summary>
internal static class MonitorChecks
{
    public static void Check(PlanPath axisPath, AxisPlan axis, List<Finding> findings)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < axis.Monitors.Count; i++)
        {
            if (axis.Monitors[i] is not { } monitor) continue;
            var path = axisPath.Member("monitors").Item(i);
            if (monitor.Name is { } name) Name(path.Member("name"), name, seen, findings);
            if (monitor is UnknownMonitor) continue;
            var type = PlanType.Of(monitor.GetType());
            Channels(path, axisPath, axis, monitor, type, findings);
            if (type.Output is { CanTrip: false } && monitor.Reaction is not (null or Reaction.None))
                findings.Add(new(path.Member("reaction"), $"reaction: {monitor.Function} has an output and never trips", "leave it out"));
            Range(path, axis, monitor, type, findings);
            if (monitor is Sls { Levels.Count: 0 }) findings.Add(new(path.Member("levels"), "levels: there is no level", "give at least one, or a limit"));
            if (monitor is Sca sca) Ranges(path, axis, sca, findings);
        }
    }

    private static void Name(PlanPath path, string name, HashSet<string> seen, List<Finding> findings)
    {
        if (name.Length == 0) findings.Add(new(path, "name: it is empty", "give the monitor a name"));
        else if (PlanNames.IsReserved(name)) findings.Add(new(path, $"name: '{name}' is reserved", "the names of stops, state, always, never and '… two channels' are taken; give another"));
        if (!seen.Add(name)) findings.Add(new(path, $"name: the axis has a monitor '{name}' already", "give each monitor a name of its own"));
    }

    private static void Channels(PlanPath path, PlanPath axisPath, AxisPlan axis, MonitorPlan monitor, PlanType type, List<Finding> findings)
    {
        var needs = type.Needs.Select(kind => (kind, path)).Concat(type.Members.Where(member => member.Get(monitor) is not null)
            .SelectMany(member => member.Needs.Select(kind => (kind, path.Member(member.Name)))));
        foreach (var (kind, place) in needs)
            ChannelChecks.Need(axisPath, axis, kind, place, $"{monitor.Name ?? "the monitor"}: {monitor.Function}", findings);
    }

    private static void Range(PlanPath path, AxisPlan axis, MonitorPlan monitor, PlanType type, List<Finding> findings)
    {
        if (type.Find("lower") is not { } lowerMember || type.Find("upper") is not { } upperMember) return;
        var lower = (Quantity?)lowerMember.Get(monitor);
        var upper = (Quantity?)upperMember.Get(monitor);
        var wraps = lowerMember.Kind?.Kind == Kind.Position && axis.Modulo is not null;
        if (wraps && (lower is null) != (upper is null))
        {
            var missing = lower is null ? "lower" : "upper";
            findings.Add(new(path.Member(missing), $"{monitor.Name}: on a modulo axis a window has two ends", $"add {missing}"));
        }

        if (lower is null || upper is null || lower.Unit.Dimension != upper.Unit.Dimension)
        {
            if (lower is null && upper is not null) HysteresisBelow(path, monitor, type, upper, findings);
            return;
        }

        if (!wraps && lower.Exact > upper.Exact)
            findings.Add(new(path.Member("lower"), $"lower: '{lower}' lies above the upper '{upper}'", "write a lower at or below the upper"));
        else if (type.Find("hysteresis")?.Get(monitor) is Quantity hysteresis && 2 * hysteresis.ExactDifference > upper.Exact - lower.Exact)
            findings.Add(NoWayOn(path, hysteresis, $"'{lower}' to '{upper}'"));
    }

    /// <summary>Below an upper limit alone there is room for a magnitude only down to 0.</summary>
    private static void HysteresisBelow(PlanPath path, MonitorPlan monitor, PlanType type, Quantity upper, List<Finding> findings)
    {
        if (type.Find("hysteresis")?.Get(monitor) is Quantity hysteresis && type.Find("signed")?.Get(monitor) is false && hysteresis.ExactDifference > upper.Exact)
            findings.Add(NoWayOn(path, hysteresis, $"0 to '{upper}'"));
    }

    private static void Ranges(PlanPath path, AxisPlan axis, Sca sca, List<Finding> findings)
    {
        if (sca.Ranges is not { } ranges) return;
        if (ranges.Count == 0) findings.Add(new(path.Member("ranges"), "ranges: there is no range", "give at least one, from and to"));
        for (var i = 0; i < ranges.Count; i++) PlanHeadChecks.Pair(path.Member("ranges").Item(i), ranges[i], "from and to", findings, axis.Modulo is not null);
        if (sca.Hysteresis is not { } hysteresis || ranges.Count == 0 || ranges.Any(range => range is not { Count: 2 } || range.Contains(null!))) return;

        var widest = ranges.Max(range => range[1].Exact - range[0].Exact is var width && width < 0 ? width + (axis.Modulo?.Exact ?? Fraction.Zero) : width);
        if (widest >= 0 && 2 * hysteresis.ExactDifference > widest) findings.Add(NoWayOn(path, hysteresis, "every range"));
    }

    private static Finding NoWayOn(PlanPath path, Quantity hysteresis, string range) =>
        new(path.Member("hysteresis"), $"hysteresis: '{hysteresis}' on every side leaves no way on within {range}", "write at most half of the range");
}
