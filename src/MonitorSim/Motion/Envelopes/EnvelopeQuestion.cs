using MonitorSim.Motion.Faults;
using MonitorSim.Plans;

namespace MonitorSim.Motion.Envelopes;

/// <summary>What happens at every sample of a recording, and what is to be found out.</summary>
public sealed record EnvelopeQuestion
{
    /// <summary>The plan; the axis needs a plant.</summary>
    public required Plan Plan { get; init; }
    /// <summary>The recording; the axis needs a speed, recorded or derived.</summary>
    public required Trace Trace { get; init; }
    /// <summary>The axis.</summary>
    public required string Axis { get; init; }
    /// <summary>What goes wrong; their own times do not count. A runaway <see cref="RunawayDirection.WithMotion"/> is tried both ways, and the worse is kept.</summary>
    public IReadOnlyList<MachineFault> Faults { get; init; } = [];
    /// <summary>A stop that is demanded at the same moment, as by an emergency stop; none: a limit has to find the fault.</summary>
    public Reaction Demand { get; init; } = Reaction.None;
    /// <summary>How long each motion is followed, s, > 0.</summary>
    public double Horizon { get; init; } = 10;
}
