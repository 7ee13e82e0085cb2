namespace MonitorSim.Assertions;

/// <summary>A replay did not do what a test expects of it. The message says what was expected, what happened instead, and what the replay has
/// to say about that monitor or axis: trips, room to its limits, coverage.</summary>
public sealed class ReplayExpectationException : Exception
{
    internal ReplayExpectationException(string expected, string instead, IEnumerable<string> facts)
        : base(string.Join(Environment.NewLine, [$"Expected: {expected}", $"But: {instead}", .. facts])) => (Expected, Instead) = (expected, instead);

    /// <summary>What the test expects.</summary>
    public string Expected { get; }

    /// <summary>What happened.</summary>
    public string Instead { get; }
}
