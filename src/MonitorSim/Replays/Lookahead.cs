using MonitorSim.Channels;
using MonitorSim.Monitors;

namespace MonitorSim.Replays;

/// <summary>Tells up to when nothing of a monitor can change, so that the cycles until then need not be stepped. It only saves work: stepping is always
/// right, and it may name a cycle too early, never one too late.</summary>
/// <param name="clock">The cycles.</param>
/// <param name="times">The samples known so far.</param>
/// <param name="isOn">Whether to look ahead at all; otherwise the answer is always the next cycle.</param>
internal sealed class Lookahead(CycleClock clock, SampleTimes times, bool isOn)
{
    /// <summary>Whether to look ahead at all.</summary>
    public bool IsOn { get; } = isOn;

    /// <summary>The first cycle after the present one at which something of the chain may change, as long as its request stays as it is.</summary>
    public int NextChange(Chain chain, in Cycle cycle)
    {
        var (next, count) = (cycle.Index + 1, clock.Count);
        if (!IsOn || next >= count) return next;
        foreach (var run in chain.Runs)
            if (run.IsOn) return next;
        var watch = chain.Watch;
        var change = count;
        if (watch.IsRequested && !watch.IsWatching)
        {
            foreach (var side in watch.Measures.Sides)
                if (side.IsComparedWhileArming || side.IgnoresDelay) return next;
            change = clock.FirstAt(watch.RequestedAt + watch.Delay, next);
        }

        var (from, until) = (clock.At(next, cycle.Sample).Sample, times.Count);
        if (watch.IsWatching)
        {
            if (!watch.Measures.IsSettled) return next;
            until = NextExceedance(watch, from, until);
        }

        until = watch.Measures.NextOutputChange(watch.IsWatching || chain.IsTripped, from, until);
        return until == times.Count ? change : Math.Min(change, clock.FirstSeeing(until, next));
    }

    private static int NextExceedance(Watch watch, int from, int until)
    {
        var sides = watch.Measures.Sides;
        for (var s = 0; s < sides.Count; s++)
        {
            var limit = sides[s].Limits[sides[s].HasLevels ? watch.Choice : 0];
            until = watch.Measures.FirstAbove(s, limit.Value, from, until, watch);
        }

        return until;
    }
}
