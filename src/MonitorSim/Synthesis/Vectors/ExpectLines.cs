using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Says as <c>expect</c> lines what came of a vector: every trip at its very cycle, nothing else in between, and every state that is reached.</summary>
/// <remarks>Sides, levels, outputs and the order of states have no line: the manifest holds them.</remarks>
internal static class ExpectLines
{
    public static IReadOnlyList<ExpectPlan> Of(Plan plan, ReplayResult result)
    {
        var lines = new List<ExpectPlan>();
        foreach (var axis in plan.Axes.Keys.Order(StringComparer.Ordinal))
        {
            var trips = result.Trips.Where(trip => trip.Axis == axis).ToList();
            if (trips.Count == 0) lines.Add(new() { Axis = axis, Monitor = "*", Trips = false });
            else foreach (var monitor in plan.Axes[axis].Monitors.Select(monitor => monitor.Name).Concat(trips.Select(trip => trip.Monitor)).Distinct().Order(StringComparer.Ordinal))
                lines.AddRange(OfMonitor(axis, monitor, [.. trips.Where(trip => trip.Monitor == monitor).Select(trip => Nanoseconds(trip.Time)).Distinct().Order()]));
            foreach (var change in result.States.Where(state => state.Axis == axis).SelectMany(state => state.Changes).DistinctBy(change => change.State))
                lines.Add(new() { Axis = axis, State = change.State, Before = Time(Nanoseconds(change.Time) + 1) });
        }

        return lines;
    }

    private static IEnumerable<ExpectPlan> OfMonitor(string axis, string monitor, IReadOnlyList<long> trips)
    {
        if (trips.Count == 0)
        {
            yield return new() { Axis = axis, Monitor = monitor, Trips = false };
            yield break;
        }

        var from = 0L;
        foreach (var trip in trips)
        {
            if (trip > from) yield return new() { Axis = axis, Monitor = monitor, Trips = false, Between = [Time(from), Time(trip - 1)] };
            yield return new() { Axis = axis, Monitor = monitor, Trips = true, Between = [Time(trip), Time(trip)] };
            from = trip + 1;
        }

        // Far beyond any vector's end.
        yield return new() { Axis = axis, Monitor = monitor, Trips = false, Between = [Time(from), Time(from + 3_600_000_000_000)] };
    }

    private static Quantity Time(long nanoseconds) => Quantity.Parse(VectorClock.Milliseconds(nanoseconds));

    private static long Nanoseconds(decimal seconds) => (long)(seconds * 1_000_000_000m);
}
