namespace MonitorSim.Motion.Envelopes;

/// <summary>How a monitor stands at the moment at which a fault begins.</summary>
internal sealed record WatchMoment
{
    /// <summary>From the fault until it watches, s; 0: it does already.</summary>
    public double From { get; init; }
    /// <summary>For how long it has watched, s.</summary>
    public double WatchedFor { get; init; }
    /// <summary>Where the axis was when it began to watch; NaN where that is not known, or is still to come.</summary>
    public double Reference { get; init; } = double.NaN;
    /// <summary>The furthest position since then towards rising ones.</summary>
    public double Highest { get; init; } = double.NaN;
    /// <summary>The furthest position since then towards falling ones.</summary>
    public double Lowest { get; init; } = double.NaN;
    /// <summary>The position at the fault.</summary>
    public double Position { get; init; } = double.NaN;
    /// <summary>The turn of a modulo axis, or null.</summary>
    public double? Modulo { get; init; }
    /// <summary>The levels of SLS in force: from when on, s, and which.</summary>
    public IReadOnlyList<(double From, int Level)> Levels { get; init; } = [(0, 0)];
}
