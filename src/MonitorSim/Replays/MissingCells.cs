using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Replays;

/// <summary>Holds the columns of a recording against what the plan needs of them.</summary>
internal static class MissingCells
{
    public static void Check(Plan plan, Trace trace, IReadOnlyList<string> columns)
    {
        var problems = new List<Problem>();
        foreach (var name in columns)
        {
            switch (trace.Find(name))
            {
                case null:
                    var closest = ClosestName.Of(name, trace.Columns.Select(c => c.Name));
                    problems.Add(new(trace.Name, $"there is no column '{name}'", closest is null ? "" : $"did you mean '{closest}'?"));
                    break;
                case NumberColumn numbers:
                    CheckCells(plan.Missing, trace.Name, numbers, problems);
                    break;
                default:
                    problems.Add(new(trace.Name, $"column '{name}' holds words", "a channel needs numbers"));
                    break;
            }
        }

        if (problems.Count > 0) throw new InputException(problems);
    }

    private static void CheckCells(MissingPolicy policy, string trace, NumberColumn column, List<Problem> problems)
    {
        if (policy == MissingPolicy.Trip) return;
        if (policy == MissingPolicy.Hold)
        {
            if (column.IsMissing(0)) problems.Add(new($"{trace}(sample 0)", $"column '{column.Name}' begins with a missing cell", "there is no value to hold; cut the head off or set \"missing\" to \"trip\""));
            return;
        }

        if (!column.HasMissing) return;
        var places = new List<int>();
        var count = 0;
        for (var k = 0; k < column.Count; k++)
        {
            if (!column.IsMissing(k)) continue;
            if (count++ < 10) places.Add(k);
        }

        problems.Add(new(trace, $"column '{column.Name}' has {count} missing cells, at samples {string.Join(", ", places)}{(count > 10 ? ", …" : "")}",
            "set \"missing\" to \"hold\" or \"trip\""));
    }
}
