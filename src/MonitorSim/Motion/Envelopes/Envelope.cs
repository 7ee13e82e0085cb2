using MonitorSim.Plans;

namespace MonitorSim.Motion.Envelopes;

/// <summary>What if something went wrong at any moment of a recording: a fault at every sample, found by the limits that watch there, and stopped.</summary>
/// <remarks>
/// <para>Each fault begins from the recorded position and speed. A limit that is passed trips after its filter (whole cycles), one cycle and the age of its input: the
/// latest that a cycle out of step with the motion knows it; where the speed is derived, the delay of its estimator is added. The drive acts the reaction delay
/// later. Each fault is looked at as if nothing had tripped before, with the requests as they are at that sample. What groups pass on is not counted.</para>
/// <para>Pitfall: where no limit watches, nothing is found; the worst figures are those of the faults after which the axis came to rest.</para>
/// </remarks>
public static class Envelope
{
    /// <summary>Simulates the faults at every sample, on all processors.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="progress">Receives each percent done, once.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">The plan is wrong, the axis has no plant or no speed, or the recording lacks what the plan needs.</exception>
    public static EnvelopeResult Of(EnvelopeQuestion question, IProgress<int>? progress = null, CancellationToken cancel = default)
    {
        var starts = FaultStarts.Of(question, cancel);
        var points = new EnvelopePoint?[starts.Count];
        var done = 0;
        Parallel.For(0, starts.Count, new() { CancellationToken = cancel }, k =>
        {
            points[k] = starts.Point(k);
            var count = (long)Interlocked.Increment(ref done);
            for (var percent = (count - 1) * 100 / starts.Count + 1; percent <= count * 100 / starts.Count; percent++) progress?.Report((int)percent);
        });
        var found = points.OfType<EnvelopePoint>().ToList();
        var isRotary = question.Plan.Axes[question.Axis].Motion == AxisMotion.Rotary;
        return new() { Axis = question.Axis, Trace = question.Trace.Name, IsRotary = isRotary, Points = found, Worst = EnvelopeResult.WorstOf(found, isRotary) };
    }

    /// <summary>The motion behind one point, from the fault on.</summary>
    /// <param name="question">What was asked.</param>
    /// <param name="point">The point.</param>
    /// <exception cref="InputException">As for the whole envelope.</exception>
    public static StopResult Motion(EnvelopeQuestion question, EnvelopePoint point) => FaultStarts.Of(question, default).Motion(point.Sample, point.Direction);
}
