namespace MonitorSim.Demo;

/// <summary>A quantity that goes in straight lines from point to point; before the first and after the last it stays.</summary>
/// <param name="points">Time in s, rising, and value.</param>
public sealed class Course(params (decimal Time, decimal Value)[] points)
{
    /// <summary>The value at a time, s.</summary>
    public decimal At(decimal time)
    {
        if (time <= points[0].Time) return points[0].Value;
        for (var i = 1; i < points.Length; i++)
        {
            var (from, to) = (points[i - 1], points[i]);
            if (time <= to.Time) return from.Value + (to.Value - from.Value) * (time - from.Time) / (to.Time - from.Time);
        }

        return points[^1].Value;
    }
}
