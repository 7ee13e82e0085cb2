using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Faults;

/// <summary>Something wrong with what is measured, while the machine itself moves as before: from a moment on, for a while or for good.</summary>
public abstract record ChannelFault
{
    /// <summary>The word that JSON has for it.</summary>
    public abstract string Fault { get; }
    /// <summary>The first sample with it; default: the first of the recording.</summary>
    [Kind(Kind.Time)] public Quantity? From { get; init; }
    /// <summary>The first sample without it again; null: it stays.</summary>
    [Kind(Kind.Time)] public Quantity? Until { get; init; }

    /// <summary>Changes a column: the samples with from &lt;= t &lt; until.</summary>
    /// <param name="times">Nanoseconds, rising.</param>
    /// <param name="values">One a sample, SI; NaN where it is missing.</param>
    internal void Apply(ReadOnlySpan<long> times, Span<double> values)
    {
        var first = AtOrAfter(times, From?.Nanoseconds ?? 0);
        var end = Until is null ? times.Length : AtOrAfter(times, Until.Nanoseconds);
        if (first < end) Spoil(times[first..end], values[first..end]);
    }

    /// <summary>Changes the samples that it concerns; there is at least one.</summary>
    private protected abstract void Spoil(ReadOnlySpan<long> times, Span<double> values);

    private static int AtOrAfter(ReadOnlySpan<long> times, long moment)
    {
        var at = times.BinarySearch(moment);
        return at < 0 ? ~at : at;
    }
}
