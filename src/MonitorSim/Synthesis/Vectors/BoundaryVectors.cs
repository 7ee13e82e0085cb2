using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Boundary vectors of a plan: synthetic recordings that meet every branch of its monitors, stops and reactor from both sides, with what must
/// come of them, for testing any other implementation of the same monitors.</summary>
public static class BoundaryVectors
{
    /// <summary>Makes the vectors of a plan.</summary>
    /// <param name="plan">The plan. Signals are free inputs, also those that the plan gives as windows.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">The plan is wrong, its gap is shorter than a cycle, or it names a column that a spreadsheet would take for a formula.</exception>
    public static VectorSet Of(Plan plan, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var bench = new Bench(plan);
        VectorCsv.Require(bench.Plan);
        var harvest = new Families(bench).Make();
        var (vectors, failed) = (new List<BoundaryVector>(), new List<string>());
        var missed = harvest.Missed.ToList();
        foreach (var attempt in harvest.Attempts)
        {
            string? why = null, error = null;
            BoundaryVector? kept = null;
            foreach (var way in attempt.Ways)
            {
                cancel.ThrowIfCancellationRequested();
                var (vector, reason, isError) = Made(plan, bench, attempt, way, vectors.Count + 1);
                if (isError) error ??= reason;
                else why ??= reason;
                if ((kept = vector) is not null) break;
            }

            if (kept is not null)
            {
                vectors.Add(kept);
            }
            else if (error is not null)
            {
                failed.Add(error);
                why = "the vector meant for it did not come out as meant: " + error;
            }

            missed.AddRange(attempt.Branches.Except(kept?.Meets ?? []).Select(branch => new MissedBranch(branch, why ?? "no vector is meant for it")));
        }

        var met = vectors.SelectMany(vector => vector.Meets).ToHashSet();
        return new(vectors, [.. missed.DistinctBy(miss => miss.Branch).Where(miss => !met.Contains(miss.Branch))], failed, Quantity.Parse(VectorClock.Milliseconds(bench.Clock.Period)), [.. Notes(plan, bench)]);
    }

    /// <summary>Makes a vector and replays its file; where that is not what was meant, the reason.</summary>
    private static (BoundaryVector? Vector, string Reason, bool IsError) Made(Plan plan, Bench bench, Attempt attempt, Func<Draft> way, int number)
    {
        Draft draft;
        try
        {
            draft = way();
            if (bench.Clock.IsLate) draft.Script.Run(1);
        }
        catch (VectorException cannot)
        {
            return (null, cannot.Message, false);
        }

        if (draft.Meets.Count == 0) draft.Meet(attempt.Branches);
        var name = Name(number, draft);
        var csv = VectorCsv.Write(bench.Plan, draft.Script);
        var result = Confirmation.Replayed(bench.Plan, csv, name);
        if (Confirmation.Objection(bench, draft, result) is var (reason, isError)) return (null, isError ? $"{draft.Name}: {reason}" : reason, isError);
        return (new()
        {
            Name = name,
            Says = draft.Says,
            Plan = bench.Plan with { Title = plan.Title.Length == 0 ? draft.Name : $"{plan.Title}: {draft.Name}", Expect = ExpectLines.Of(bench.Plan, result) },
            Csv = csv,
            Meets = draft.Meets,
            Expected = result,
        }, "", false);
    }

    private static IEnumerable<string> Notes(Plan plan, Bench bench)
    {
        foreach (var (name, signal) in plan.Signals.OrderBy(signal => signal.Key, StringComparer.Ordinal))
            if (signal.Windows is not null) yield return $"signal {name}: its windows belong to a recording; here it is a column '{bench.Plan.Signals[name].Column}'";
        if (bench.Clock.Uneven is { Count: > 0 } uneven)
            yield return $"no cycle falls on {string.Join(", ", uneven.Select(VectorClock.Milliseconds))}: these times are reached at the first cycle after them, and one cycle less is the last one before them";
        if (plan.Motion != Plans.MotionSource.Recorded) yield return "motion stays as written after a reaction, although the plan simulates it";
    }

    private static string Name(int number, Draft draft) => FormattableString.Invariant($"{number:000}-") + FileName.Of(
        string.Join('-', new string([.. draft.Name.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries)));
}
