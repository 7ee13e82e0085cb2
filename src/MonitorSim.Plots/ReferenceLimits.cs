using MonitorSim.Monitors;
using MonitorSim.Plans;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>Limits that are distances from a latched reference, drawn on the position's own scale: SOS and SLI around where watching began, SDI behind
/// the furthest position reached.</summary>
internal static class ReferenceLimits
{
    public static void Draw(Plot plot, MonitorPlan monitor, Headroom side, Series series, double from, double until)
    {
        var distance = series.Difference(side.Limit);
        if (monitor is Sli sli)
        {
            var end = sli.MoveTime is { } move ? Math.Min(until, from + move.Nanoseconds / 1e9) : until;
            if (side.Side == "increment") until = end;
            else from = end;
        }

        var seen = Enumerable.Range(0, series.Times.Length).Where(k => series.Times[k] >= from && series.Times[k] <= until && double.IsFinite(series.Values[k])).ToList();
        if (seen.Count == 0) return;
        if (monitor is Sdi sdi)
        {
            Behind(plot, sdi, series, seen, distance);
            return;
        }

        Around(plot, series, series.Values[seen[0]], distance, from, until);
    }

    /// <summary>Two lines at a distance from a middle.</summary>
    public static void Around(Plot plot, Series series, double middle, double distance, double from, double until)
    {
        foreach (var y in distance == 0 ? new[] { middle } : [middle + distance, middle - distance]) LimitLine.Level(plot, series, y, from, until);
    }

    private static void Behind(Plot plot, Sdi sdi, Series series, List<int> seen, double distance)
    {
        var sign = sdi.Allow == Direction.Positive ? 1 : -1;
        var furthest = series.Values[seen[0]];
        var line = new List<double>();
        foreach (var k in seen)
        {
            if (sdi.Reference == DirectionReference.Furthest && sign * series.Values[k] > sign * furthest) furthest = series.Values[k];
            line.Add(furthest - sign * distance);
        }

        LimitLine.Moving(plot, [.. seen.Select(k => series.Times[k])], [.. line]);
    }
}
