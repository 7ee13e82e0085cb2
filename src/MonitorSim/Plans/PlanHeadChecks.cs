using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>Version, timing, how the recording is read, signals, acknowledgement, groups.</summary>
internal static class PlanHeadChecks
{
    private static readonly string[] TimeUnits = ["s", "ms", "us", "µs", "μs", "ns"];

    public static void Check(Plan plan, List<Finding> findings)
    {
        var root = PlanPath.Root;
        if (plan.Version != 1) findings.Add(new(root.Member("plan"), $"plan: version {plan.Version} is not known", "write 1"));
        if (plan.Axes.Count == 0) findings.Add(new(root.Member("axes"), "axes: there is no axis", "give at least one"));
        Timing(plan, root.Member("phase"), findings);
        Format(plan.Trace, root.Member("trace"), findings);
        Signals(plan, root.Member("signals"), findings);
        Groups(plan, root.Member("groups"), findings);
        if (plan.Acknowledge is { Signal: { } signal } && !plan.Signals.ContainsKey(signal))
            findings.Add(new(root.Member("acknowledge").Member("signal"), $"signal: unknown signal '{signal}'", ClosestName.Advice(signal, [.. plan.Signals.Keys], "signal")));
    }

    private static void Timing(Plan plan, PlanPath path, List<Finding> findings)
    {
        if (plan.Phase is null || !IsTime(plan.Phase)) return;
        if (plan.Cycle is null)
        {
            if (plan.Phase.Number > 0) findings.Add(new(path, $"phase: '{plan.Phase}' needs a cycle of its own", "give a cycle such as 4 ms, or no phase") { Concerns = [PlanPath.Root.Member("cycle")] });
        }
        else if (IsTime(plan.Cycle) && plan.Cycle.Exact <= plan.Phase.Exact)
        {
            findings.Add(new(path, $"phase: '{plan.Phase}' is not below the cycle of '{plan.Cycle}'", "write 0 or more, and less than the cycle"));
        }

        static bool IsTime(Quantity quantity) => quantity.Unit.Dimension == Dimension.Second;
    }

    public static void Format(TraceFormat? format, PlanPath path, List<Finding> findings)
    {
        if (format is null) return;
        if (format is { Time: not null, Rate: not null })
            findings.Add(new(path.Member("rate"), "rate: the times are given by a column already", "keep either time or rate"));
        if (format.Delimiter is { Length: not 1 } or "\"" or "\n" or "\r")
            findings.Add(new(path.Member("delimiter"), $"delimiter: '{format.Delimiter}' cannot separate cells", "write one character, such as ; or \\t"));
        if (format.Decimal is not (null or "." or ","))
            findings.Add(new(path.Member("decimal"), $"decimal: '{format.Decimal}' is no decimal mark", "write . or ,"));
        if (format.Decimal is not null && format.Decimal == format.Delimiter)
            findings.Add(new(path.Member("decimal"), $"decimal: '{format.Decimal}' is the delimiter too", "write two different characters"));
        if (format.SkipRows < 0) findings.Add(new(path.Member("skipRows"), $"skipRows: {format.SkipRows} is below 0", "write 0 or more"));
        if (format.Time?.Unit is { } unit && !TimeUnits.Contains(unit, StringComparer.Ordinal))
            findings.Add(new(path.Member("time").Member("unit"), $"unit: '{unit}' is no unit of recorded times", "would do: s, ms, us, µs, ns; none for date-times of ISO 8601"));
    }

    private static void Signals(Plan plan, PlanPath path, List<Finding> findings)
    {
        foreach (var (name, signal) in plan.Signals)
        {
            var place = path.Member(name);
            if (name is "" or "always" or "never") findings.Add(new(place, $"{name}: the name '{name}' is reserved", "give the signal another name"));
            if (signal is null) continue;
            if (signal is { EqualTo: not null, Column: null })
                findings.Add(new(place.Member("equals"), "equals: there is no column to compare", "give a column") { Concerns = [place.Member("column")] });
            for (var i = 0; i < signal.Windows?.Count; i++) Pair(place.Member("windows").Item(i), signal.Windows[i], "from and until", findings);
        }
    }

    private static void Groups(Plan plan, PlanPath path, List<Finding> findings)
    {
        foreach (var (name, axes) in plan.Groups)
        {
            for (var i = 0; i < axes?.Count; i++)
            {
                var place = path.Member(name).Item(i);
                if (axes[i] is not { } axis) continue;
                if (!plan.Axes.ContainsKey(axis)) findings.Add(new(place, $"{name}: unknown axis '{axis}'", ClosestName.Advice(axis, [.. plan.Axes.Keys], "axis")));
                else if (axes.Take(i).Contains(axis, StringComparer.Ordinal)) findings.Add(new(place, $"{name}: axis '{axis}' appears twice", "name each axis once"));
            }
        }
    }

    /// <summary>Two quantities of one dimension, the second not below the first (unless the axis wraps).</summary>
    public static void Pair(PlanPath path, IReadOnlyList<Quantity>? pair, string members, List<Finding> findings, bool mayWrap = false)
    {
        if (pair is null) return;
        if (pair.Count != 2)
            findings.Add(new(path, $"{path.Name}: a pair of {members} has {pair.Count} values", $"write two: {members}"));
        else if (!mayWrap && pair[0] is { } from && pair[1] is { } to && from.Unit.Dimension == to.Unit.Dimension && from.Exact > to.Exact)
            findings.Add(new(path, $"{path.Name}: '{from}' lies above '{to}'", $"write {members} in rising order"));
    }
}
