namespace MonitorSim.Motion;

/// <summary>A motion as the stretches that it was made of.</summary>
public sealed class Trajectory
{
    private readonly List<Segment> _segments = [];

    internal Trajectory() { }

    internal IReadOnlyList<Segment> Segments => _segments;

    /// <summary>When it begins, s.</summary>
    public double From => _segments.Count == 0 ? 0 : _segments[0].From;

    /// <summary>When it ends, s.</summary>
    public double Until => _segments.Count == 0 ? 0 : _segments[^1].Until;

    /// <summary>The state at a moment.</summary>
    /// <param name="time">s, from <see cref="From"/> to <see cref="Until"/>; outside, the state at the nearer end.</param>
    public MotionState At(double time)
    {
        if (_segments.Count == 0) return default;
        time = Math.Clamp(time, From, Until);
        int low = 0, high = _segments.Count - 1;
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (_segments[middle].From <= time) low = middle;
            else high = middle - 1;
        }

        return _segments[low].At(time);
    }

    /// <summary>The state at the end.</summary>
    public MotionState End => At(Until);

    internal void Add(Segment segment) => _segments.Add(segment);
}
