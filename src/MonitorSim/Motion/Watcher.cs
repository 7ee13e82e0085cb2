using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>A limit that watches a simulated motion in continuous time: it trips a filter and a response after the moment at which it is passed, the latest
/// that a cycle out of step with the motion would know.</summary>
/// <param name="Monitor">Whose limit.</param>
/// <param name="Side">Which side.</param>
/// <param name="Measure">What is compared; NaN where nothing is.</param>
/// <param name="Limit">Passed where the measure is more.</param>
internal sealed record Watcher(string Monitor, string Side, Func<MotionState, double> Measure, double Limit)
{
    /// <summary>When watching begins, s.</summary>
    public double From { get; init; }
    /// <summary>How long the limit must stay passed, s.</summary>
    public double Filter { get; init; }
    /// <summary>From there until the trip, s.</summary>
    public double Response { get; init; }
    /// <summary>What the trip demands.</summary>
    public Reaction Reaction { get; init; }
    /// <summary>The SI unit of measure and limit.</summary>
    public string Unit { get; init; } = "";

    /// <summary>How far the limit is passed at a moment: 0 or more where it is passed at all, so by the least double more than it.</summary>
    public double Excess(in MotionState state) => state.Time >= From ? Measure(state) - Math.BitIncrement(Limit) : double.NaN;
}

/// <summary>A watcher during one motion.</summary>
internal sealed class Watch(Watcher watcher)
{
    public Watcher Watcher => watcher;

    /// <summary>Since when the limit is passed without interruption.</summary>
    public double? Since { get; private set; }

    /// <summary>When it trips, once that is certain.</summary>
    public double? TripsAt { get; private set; }

    /// <summary>How far it was passed at most.</summary>
    public double Overrun { get; private set; } = double.NegativeInfinity;

    /// <summary>Follows a stretch of motion.</summary>
    public void Follow(Segment segment, double until)
    {
        if (TripsAt is not null) return;
        var (low, length) = (segment.From, (until - segment.From) / segment.Parts);
        if (Since is null) NoteFrom(segment, low, low);
        for (var part = 1; part <= segment.Parts && TripsAt is null; part++)
        {
            var high = part == segment.Parts ? until : segment.From + part * length;
            NoteFrom(segment, low, high);
            low = high;
        }
    }

    /// <summary>Takes back what was found after a moment at which the motion changed.</summary>
    public void Forget(double after)
    {
        if (Since > after) (Since, TripsAt) = (null, null);
        else if (Since + watcher.Filter > after) TripsAt = null;
    }

    /// <summary>Notes how far a stretch passes the limit.</summary>
    public void NoteOverrun(Segment segment)
    {
        for (var part = 0; part <= segment.Parts; part++)
        {
            var state = segment.At(part == segment.Parts ? segment.Until : segment.From + part * (segment.Until - segment.From) / segment.Parts);
            if (state.Time >= watcher.From && watcher.Measure(state) - watcher.Limit is var over && over > Overrun) Overrun = over;
        }
    }

    private void NoteFrom(Segment segment, double low, double high)
    {
        if (!(watcher.Excess(segment.At(high)) >= 0))
        {
            // It may have lasted long enough before it ended.
            if (Since is { } since && low - since >= watcher.Filter) TripsAt = since + watcher.Filter + watcher.Response;
            else Since = null;
            return;
        }

        Since ??= low == high ? low : Crossing.First(time => watcher.Excess(segment.At(time)), low, high);
        if (high - Since >= watcher.Filter) TripsAt = Since + watcher.Filter + watcher.Response;
    }
}
