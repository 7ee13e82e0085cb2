namespace MonitorSim.Tests.Model;

/// <summary>What would have been: a monitor compared again over a stretch of request, with another delay or filter, by trying all.</summary>
internal sealed class ModelHindsight(ModelMonitor monitor, ModelClock clock)
{
    /// <summary>The critical limit and the first cycle at which a limit just below it would trip, over several stretches.</summary>
    public static (Fraction Limit, int At)? Critical(ModelMonitor monitor, ModelClock clock, IEnumerable<Compared?[][]> stretches, IEnumerable<int> starts, int side, int? level)
    {
        (Fraction Limit, int At)? best = null;
        foreach (var (compared, start) in stretches.Zip(starts))
            if (Critical(monitor, clock, compared, start, side, level) is { } here && (best is null || here.Limit > best.Value.Limit)) best = here;
        return best;
    }

    /// <summary>All cycles of a stretch, compared with a delay of its own.</summary>
    public Compared?[][] Replay(ModelStretch stretch, int from, long delay)
    {
        var measure = monitor.Create();
        var asked = clock.Times[from];
        return [.. Enumerable.Range(from, stretch.Until - from + 1).Select(n => measure.Step(
            new(n, clock.Times[n], clock.Samples[n], asked, clock.Times[n] - asked >= delay, stretch.Chosen[n - stretch.From], delay)))];
    }

    /// <summary>The smallest limit, the longest filter that trips, the longest delay that trips, for a trip's side.</summary>
    public (Fraction? Limit, long Filter, long? Delay) AvoidedBy(ModelTrip trip, ModelStretch stretch)
    {
        var compared = Replay(stretch, trip.Asked, monitor.Delay);
        var limit = Critical(monitor, clock, compared, trip.Asked, trip.Side, trip.Compared!.Value.Level)?.Limit;
        return (limit, LongestRun(compared, trip.Asked, trip.Side)!.Value, LongestDelay(trip, stretch));
    }

    private static (Fraction Limit, int At)? Critical(ModelMonitor monitor, ModelClock clock, Compared?[][] compared, int start, int side, int? level)
    {
        (Fraction Limit, int At)? best = null;
        for (var j = 0; j < compared.Length; j++)
        {
            Fraction? least = null;
            for (var n = j; n < compared.Length && compared[n][side] is { } c; n++)
            {
                if (c.Level == level) least = least is { } before ? Fraction.Min(before, c.X) : c.X;
                else if (c.X <= c.Limit) break;
                if (clock.Times[start + n] - clock.Times[start + j] < monitor.Filter || least is not { } x) continue;
                if (best is not { } b || x > b.Limit || x.CompareTo(b.Limit) == 0 && start + n < b.At) best = (x, start + n);
            }
        }

        return best;
    }

    private long? LongestRun(Compared?[][] compared, int start, int side)
    {
        long? longest = null;
        int? from = null;
        for (var n = 0; n < compared.Length; n++)
        {
            if (compared[n][side] is not { } c || c.X <= c.Limit)
            {
                from = null;
                continue;
            }

            from ??= n;
            longest = Math.Max(longest ?? 0, clock.Times[start + n] - clock.Times[start + from.Value]);
        }

        return longest;
    }

    private long? LongestDelay(ModelTrip trip, ModelStretch stretch)
    {
        if (monitor.IsStop && monitor.Name is not ("STO" or "SBC") && !monitor.Sides.Any(side => side.Name == "deceleration")) return null;
        bool Trips(long delay) => LongestRun(Replay(stretch, trip.Asked, delay), trip.Asked, trip.Side) is { } run && run >= monitor.Filter;
        if (Trips(long.MaxValue)) return null;
        foreach (var delay in Delays(trip.Asked, stretch.Until))
            if (Trips(delay)) return delay == clock.Times[stretch.Until] - clock.Times[trip.Asked] ? null : delay;
        return null;
    }

    // Nothing changes between two neighbours of these: a start within the stretch, or (with levels) the end of a level's stay. The longest first.
    private IEnumerable<long> Delays(int from, int until)
    {
        var delays = new SortedSet<long>();
        for (var m = from; m <= (monitor.Levels is null ? from : until); m++)
            for (var n = m; n <= until; n++) delays.Add(clock.Times[n] - clock.Times[m]);
        return delays.Reverse();
    }
}
