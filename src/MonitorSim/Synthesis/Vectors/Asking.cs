namespace MonitorSim.Synthesis.Vectors;

/// <summary>The settings at which a monitor is asked for and is not.</summary>
/// <param name="Yes">Asked for; null where no setting of signals makes it so.</param>
/// <param name="No">Not asked for; null where it always is.</param>
/// <param name="Why">What cannot be and why; empty where both can.</param>
internal sealed record Asking(Setting? Yes, Setting? No, string Why)
{
    /// <summary>What is taken for granted of outputs and states, in words; null: nothing.</summary>
    public string? Assumption { get; init; }
}
