using MonitorSim.Plans;

namespace MonitorSim.Motion.Envelopes;

/// <summary>A fault at every sample of a recording.</summary>
public sealed record EnvelopeResult
{
    private const double Rounding = 1e-9;

    /// <summary>The axis.</summary>
    public required string Axis { get; init; }
    /// <summary>The recording's name.</summary>
    public required string Trace { get; init; }
    /// <summary>Whether the axis is rotary: rad instead of m.</summary>
    public required bool IsRotary { get; init; }
    /// <summary>One point a sample that has a speed.</summary>
    public required IReadOnlyList<EnvelopePoint> Points { get; init; }
    /// <summary>The worst of each figure among the faults after which the axis came to rest.</summary>
    public required IReadOnlyList<WorstFigure> Worst { get; init; }

    /// <summary>Faults that no limit found within the simulated time, while the axis went on.</summary>
    public int Undetected => Points.Count(point => !point.IsDetected && point.Time is null);

    /// <summary>Faults that no limit found, but after which the axis came to rest by itself.</summary>
    public int Harmless => Points.Count(point => !point.IsDetected && point.Time is not null);

    /// <summary>Faults that were found and yet not brought to rest within the simulated time.</summary>
    public int NotStopped => Points.Count(point => point.IsDetected && point.Time is null);

    internal static IReadOnlyList<WorstFigure> WorstOf(IReadOnlyList<EnvelopePoint> points, bool isRotary)
    {
        var (length, speed) = isRotary ? ("rad", "rad/s") : ("m", "m/s");
        var counted = points.Where(point => point.Time is not null).ToList();
        var worst = new List<WorstFigure>();
        void Add(string figure, string unit, Func<EnvelopePoint, double?> value)
        {
            if (First(counted.Where(point => value(point) is not null), point => value(point)!.Value) is { } point) worst.Add(new(figure, null, value(point)!.Value, unit, point));
        }

        Add("distance", length, point => point.Distance);
        Add("time", "s", point => point.Time);
        Add("peak speed", speed, point => point.PeakSpeed);
        Add("energy", "J", point => point.Energy);
        Add("fall", length, point => point.Fall);
        Add("drop", length, point => point.Drop);
        foreach (var limit in counted.SelectMany(point => point.Overruns.Select(overrun => (overrun.Monitor, overrun.Side, overrun.Unit, overrun.Amount, Point: point)))
                     .GroupBy(overrun => (overrun.Monitor, overrun.Side)).OrderBy(group => group.Key.Monitor, StringComparer.Ordinal).ThenBy(group => group.Key.Side, StringComparer.Ordinal))
        {
            var most = First(limit, overrun => overrun.Amount);
            worst.Add(new("overrun", limit.Key, most.Amount, most.Unit, most.Point));
        }

        return worst;
    }

    // Of moments that are equally bad but for rounding, the first.
    private static T? First<T>(IEnumerable<T> points, Func<T, double> value)
    {
        var candidates = points.ToList();
        if (candidates.Count == 0) return default;
        var most = candidates.Max(value);
        return candidates.First(point => value(point) >= most - Rounding * Math.Abs(most));
    }
}
