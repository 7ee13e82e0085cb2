using Fractions;
using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Quantities;
using MonitorSim.Tuning;

namespace MonitorSim.Replays;

/// <summary>What would have avoided each trip, and the room to each limit: asked of the same measures that tripped.</summary>
/// <param name="clock">The cycles of the replay.</param>
/// <param name="cycles">How many were run.</param>
internal sealed class Evidence(CycleClock clock, int cycles)
{
    public Trip Of(TripNote note) => Of(note, AvoidedBy(note));

    /// <summary>The trip with what would have avoided it, worked out or not.</summary>
    public Trip Of(TripNote note, AvoidedBy avoidedBy)
    {
        var run = note.Monitor;
        return new(run.Axis, run.Name, run.Function, note.Side?.Name ?? "invalid input", note.Side?.HasLevels == true ? note.Level : null,
            note.Cycle.Sample, Seconds.Of(note.Cycle.Time), Shown(note.Side, note.Value), note.Side is { } side ? Shown(side, side.Limits[note.Level].Exact) : null,
            note.Side?.Unit, Shown(note.Side, note.Peak), Seconds.Of(note.RequestedAt), Seconds.Of(note.WatchingAt), Seconds.Of(note.ExceededAt),
            run.Reaction, avoidedBy);
    }

    public IEnumerable<Headroom> Headroom(MonitorRun run)
    {
        for (var s = 0; s < run.Sides.Count; s++)
        {
            var side = run.Sides[s];
            for (var level = 0; level < side.Limits.Count; level++)
            {
                var found = new SideSweep(run, s, clock).Critical(level, run.Filter, cycles);
                var limit = side.Limits[level].Exact;
                var critical = found.Value?.Exact();
                var room = limit - critical;
                var shown = side.Shown(limit);
                var percent = shown.IsZero ? null : room / shown.Abs() * 100;
                yield return new(run.Axis, run.Name, side.Name, side.HasLevels ? level : null, Shown(side, critical), Shown(side, limit)!.Value,
                    Nearest(room), Nearest(percent), critical is null ? null : Seconds.Of(found.At), side.Unit);
            }
        }
    }

    private AvoidedBy AvoidedBy(TripNote note)
    {
        var (run, exact) = (note.Monitor, !note.Monitor.DependsOnReplay);
        if (note.Side is not { } side) return new(null, null, null, exact);
        var s = run.Sides.TakeWhile(other => other != side).Count();
        var from = CycleAt(note.RequestedAt);
        var stretch = (from, run.Track.EndOf(from, cycles));
        var sweep = new SideSweep(run, s, clock);
        var critical = sweep.Critical(note.Level, run.Filter, cycles, stretch);
        var delay = run.HasDelay && !side.IgnoresDelay ? new LongestDelay(run, s, clock).In(stretch.from, stretch.Item2, out _) : null;
        return new(Shown(side, critical.Value?.Exact()), Seconds.Of(sweep.LongestRun(cycles, stretch)), Seconds.Of(delay), exact);
    }

    /// <summary>The index of the cycle with that time.</summary>
    private int CycleAt(long time)
    {
        int low = 0, high = cycles - 1;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (clock.TimeOf(middle) < time) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    private static double? Shown(Side? side, in Reading reading) => side is null ? null : Shown(side, reading.Exact());

    private static double? Shown(Side side, Fraction? value) => Nearest(value is { } known ? side.Shown(known) : null);

    private static double? Nearest(Fraction? value) => value is { } known ? ExactDouble.Nearest(known) : null;
}
