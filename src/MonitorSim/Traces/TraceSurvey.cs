namespace MonitorSim.Traces;

/// <summary>What is in a recording, and how it is written: for <c>describe</c>, and to start a plan from.</summary>
public sealed record TraceSurvey
{
    private TraceSurvey() { }

    /// <summary>The recording.</summary>
    public required Trace Trace { get; init; }

    /// <summary>How it is written, with what was assumed.</summary>
    public required DialectFound Found { get; init; }

    /// <summary>From the first sample to the last, ns.</summary>
    public long Duration => Trace.Times[^1];

    /// <summary>The steps from sample to sample; null where there is one sample only.</summary>
    public required Sampling? Sampling { get; init; }

    /// <summary>The largest difference of a step from the median, gaps left out, ns; null where there is one sample only.</summary>
    public required double? Jitter { get; init; }

    /// <summary>Steps longer than <see cref="Sampling.GapInMedians"/> medians.</summary>
    public required IReadOnlyList<Gap> Gaps { get; init; }

    /// <summary>The columns, in the order of the file, without the time.</summary>
    public required IReadOnlyList<ColumnSurvey> Columns { get; init; }

    /// <summary>Looks through a recording.</summary>
    /// <param name="trace">The recording, as <see cref="TraceReader"/> gives it.</param>
    /// <param name="found">How it turned out to be written.</param>
    public static TraceSurvey Of(Trace trace, DialectFound found)
    {
        var sampling = trace.Sampling;
        return new TraceSurvey
        {
            Trace = trace,
            Found = found,
            Sampling = sampling,
            Jitter = sampling is null ? null : LargestDeviation(trace.Times, sampling),
            Gaps = sampling is null ? [] : Sampling.GapsLongerThan(sampling.LongestWithoutGap, trace.Times),
            Columns = [.. trace.Columns.Select(ColumnSurvey.Of)],
        };
    }

    /// <summary>Reads a whole recording and looks through it.</summary>
    /// <param name="path">The file's path, or <c>-</c> for standard input.</param>
    /// <param name="dialect">How it is written; what is not set is worked out.</param>
    /// <param name="progress">Told the bytes read so far, now and then.</param>
    /// <param name="cancel">Stops reading.</param>
    /// <exception cref="InputException">It cannot be read.</exception>
    public static TraceSurvey OfFile(string path, Dialect? dialect = null, IProgress<long>? progress = null, CancellationToken cancel = default)
    {
        var trace = TraceReader.Read(path, dialect, null, out var found, progress, cancel);
        return Of(trace, found);
    }

    private static double LargestDeviation(ReadOnlySpan<long> times, Sampling sampling)
    {
        var (median, gap, largest) = (sampling.Median.ToDouble(), sampling.LongestWithoutGap, 0.0);
        for (var k = 1; k < times.Length; k++)
        {
            var step = times[k] - times[k - 1];
            if (step <= gap) largest = Math.Max(largest, Math.Abs(step - median));
        }

        return largest;
    }
}
