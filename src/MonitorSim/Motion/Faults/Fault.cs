namespace MonitorSim.Motion.Faults;

/// <summary>Something that goes wrong at a moment.</summary>
public abstract record Fault
{
    /// <summary>When it begins, ns from the first sample of a recording; for a simulated stop from the beginning of its motion. >= 0.</summary>
    public long From { get; init; }
}
