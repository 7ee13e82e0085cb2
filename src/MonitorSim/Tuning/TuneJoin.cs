namespace MonitorSim.Tuning;

/// <summary>Joins parts that were tuned apart. Largest of largest is the largest of all, so that no grouping and no order changes a bit.</summary>
internal static class TuneJoin
{
    /// <summary>Joins parts and gives the bounds of all their runs together.</summary>
    /// <param name="parts">At least one.</param>
    /// <param name="names">What messages call the parts.</param>
    /// <exception cref="InputException">Parts of different plans, or one recording in two of them.</exception>
    public static TuneResult Of(IReadOnlyList<TuneResult> parts, Func<int, string> names)
    {
        var problems = new List<Problem>();
        for (var k = 1; k < parts.Count; k++) problems.AddRange(Strange(parts[0], names(0), parts[k], names(k)));
        if (problems.Count == 0) problems.AddRange(Twice(parts, names));
        return problems.Count == 0 ? Merge(parts).WithBounds() : throw new InputException(problems);
    }

    /// <summary>Joins parts of one plan; the bounds are left for <see cref="TuneResult.WithBounds"/>.</summary>
    public static TuneResult Merge(IReadOnlyList<TuneResult> parts) => parts[0] with
    {
        Recordings = [.. parts.SelectMany(part => part.Recordings).OrderBy(r => r.Trace, StringComparer.Ordinal).ThenBy(r => r.Sha256, StringComparer.Ordinal)],
        Monitors = [.. parts.SelectMany(part => part.Monitors).GroupBy(limit => limit.Key).Select(limits => Merge([.. limits]))
            .OrderBy(limit => limit.Axis, StringComparer.Ordinal).ThenBy(limit => limit.Monitor, StringComparer.Ordinal)
            .ThenBy(limit => limit.Side, StringComparer.Ordinal).ThenBy(limit => limit.Level)],
        Phases = [.. parts.SelectMany(part => part.Phases).OrderBy(p => p.Outcome.Axis, StringComparer.Ordinal).ThenBy(p => p.Outcome.Monitor, StringComparer.Ordinal).ThenBy(p => p.Trace, StringComparer.Ordinal)],
    };

    private static TunedLimit Merge(IReadOnlyList<TunedLimit> limits)
    {
        var first = limits[0];
        var criticals = limits.Select(limit => limit.Critical).OfType<double>().ToList();
        double? critical = criticals.Count == 0 ? null : first.IsLower ? criticals.Min() : criticals.Max();
        var noDelayHelps = limits.Any(limit => limit.NoDelayHelps);
        return first with
        {
            Critical = critical,
            FilterAbove = limits.Max(limit => limit.FilterAbove),
            DelayAbove = noDelayHelps ? null : limits.Max(limit => limit.DelayAbove),
            NoDelayHelps = noDelayHelps,
            Frontier = Largest(limits.SelectMany(limit => limit.Frontier), first.IsLower),
            Runs = [.. limits.SelectMany(limit => limit.Runs).OrderBy(run => run.Trace, StringComparer.Ordinal).ThenBy(run => run.Critical)],
            Room = new() { From = critical },
        };
    }

    /// <summary>The pointwise largest of staircases: from the longest filter down, only a higher limit is a step; of equal ones the first by name and time.</summary>
    private static List<FrontierStep> Largest(IEnumerable<FrontierStep> steps, bool isLower)
    {
        var sign = isLower ? -1 : 1;
        var kept = new List<FrontierStep>();
        foreach (var step in steps.OrderByDescending(s => s.Filter).ThenByDescending(s => sign * s.Limit).ThenBy(s => s.Trace, StringComparer.Ordinal).ThenBy(s => s.From))
            if (kept.Count == 0 || sign * step.Limit > sign * kept[^1].Limit) kept.Add(step);
        kept.Reverse();
        return kept;
    }

    private static IEnumerable<Problem> Strange(TuneResult first, string firstName, TuneResult other, string name)
    {
        if (other.Plan != first.Plan)
        {
            yield return new(name, $"this part was tuned with another plan than {firstName}: {Identity(other.Plan)}, not {Identity(first.Plan)}", "tune all parts with the same plan file");
            yield break;
        }

        if (other.Phases.Count == 0 != (first.Phases.Count == 0))
        {
            var (with, without) = first.Phases.Count > 0 ? (firstName, name) : (name, firstName);
            yield return new(name, $"{with} was tuned with --phases, {without} was not: what all phases need would be told of some recordings only", "tune all parts with --phases, or none");
        }

        var known = first.Monitors.ToDictionary(limit => limit.Key);
        foreach (var limit in other.Monitors)
        {
            if (!known.Remove(limit.Key, out var same)) yield return new(name, $"{firstName} has no {Spoken(limit)}", "tune all parts with the same plan file");
            else if ((limit.Limit, limit.Filter, limit.Unit, limit.Function, limit.Written, limit.Reaction) != (same.Limit, same.Filter, same.Unit, same.Function, same.Written, same.Reaction))
                yield return new(name, FormattableString.Invariant($"{Spoken(limit)} has the limit {limit.Written} and the filter {limit.Filter} s, in {firstName} {same.Written} and {same.Filter} s"), "tune all parts with the same plan file");
        }

        foreach (var limit in known.Values) yield return new(name, $"this part has no {Spoken(limit)}, {firstName} has", "tune all parts with the same plan file");
    }

    // A copy says nothing new: counted twice it would make bounds look surer than they are.
    private static IEnumerable<Problem> Twice(IReadOnlyList<TuneResult> parts, Func<int, string> names)
    {
        var seen = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var k = 0; k < parts.Count; k++)
        {
            foreach (var recording in parts[k].Recordings)
            {
                if (recording.Sha256 is { } hash && !seen.TryAdd(hash, $"{recording.Trace} of {names(k)}"))
                    yield return new(names(k), $"the recording {recording.Trace} has the same content as {seen[hash]}", "count each recording once: a copy is no further run");
            }
        }
    }

    private static string Identity(TunedPlan plan) => $"'{plan.Title}'{(plan.Sha256 is { Length: >= 8 } hash ? $" ({hash[..8]}…)" : "")}";

    private static string Spoken(TunedLimit limit) =>
        FormattableString.Invariant($"{limit.Axis}.{limit.Monitor}, side {limit.Side}") + (limit.Level is { } level ? FormattableString.Invariant($", level {level}") : "");
}
