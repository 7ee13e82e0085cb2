using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What came between in a vector: something that the plan gives no way to keep off, so that the vector shows it and not what was meant.</summary>
internal static class Disturbance
{
    /// <summary>The first one, in words; null where there was none.</summary>
    /// <param name="bench">The plan.</param>
    /// <param name="draft">What was meant.</param>
    /// <param name="result">What came.</param>
    /// <param name="until">The time up to which it counts, s.</param>
    public static string? Of(Bench bench, Draft draft, ReplayResult result, decimal until)
    {
        var axes = draft.Meant.Select(one => one.Axis).Concat(draft.States.Select(one => one.Axis)).Concat(draft.Begins is { } begin ? [begin.Axis] : [])
            .SelectMany(bench.GroupOf).ToHashSet(StringComparer.Ordinal);
        return OfTrips(draft, result, axes, until) ?? (draft.IsOfStates ? OfRequests(draft, result, axes, until) : null);
    }

    /// <summary>A trip of another side of the same monitor, or of a monitor that stops the axis or its group.</summary>
    private static string? OfTrips(Draft draft, ReplayResult result, HashSet<string> axes, decimal until)
    {
        foreach (var trip in result.Trips.Where(trip => trip.Time <= until && draft.CalledBy != (trip.Axis, trip.Monitor)))
        {
            if (draft.Trips.Any(meant => meant.Axis == trip.Axis && meant.Monitor == trip.Monitor && meant.Side == trip.Side)) continue;
            var isMeant = draft.Meant.Contains((trip.Axis, trip.Monitor));
            var isOtherSide = isMeant && draft.Side is { } side && side != trip.Side;
            if (isOtherSide || (draft.IsOfStates && trip.Reaction != Reaction.None && axes.Contains(trip.Axis) && !isMeant))
                return $"{trip.Axis}.{trip.Monitor} trips first ({trip.Side}, at {VectorClock.Text(trip.Time)} of the vector that was to meet it)";
        }

        return null;
    }

    /// <summary>A request that comes with the signals that were meant for another.</summary>
    private static string? OfRequests(Draft draft, ReplayResult result, HashSet<string> axes, decimal until)
    {
        var requests = axes.SelectMany(axis => new[] { "STO", "SS1", "SS2", "SOS" }.Select(stop => $"{axis}.{stop}")).ToHashSet(StringComparer.Ordinal);
        var meant = draft.Meant.Concat(draft.CalledBy is { } by ? [by] : []).Select(one => $"{one.Axis}.{one.Monitor}").ToHashSet(StringComparer.Ordinal);
        foreach (var change in result.States.Where(states => axes.Contains(states.Axis)).SelectMany(states => states.Changes).Where(change => change.Time <= until))
        {
            foreach (var cause in change.Cause.Split(", "))
            {
                if (!requests.Contains(cause) || meant.Contains(cause)) continue;
                if (draft.Begins is { } begun && Severity(cause.Split('.')[^1]) <= Severity(draft.Meant.First(one => one.Axis == begun.Axis).Monitor)) continue;
                return $"{cause} is requested first (at {VectorClock.Text(change.Time)} of the vector that was to meet it)";
            }
        }

        return null;
    }

    private static int Severity(string stop) => stop switch { "SBC" or "STO" => 4, "SS1" => 3, "SS2" => 2, _ => 1 };
}
