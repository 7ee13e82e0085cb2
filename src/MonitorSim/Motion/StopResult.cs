using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>How a stop, or a fault and the stop that answers it, came out. SI; times and distances from the beginning of the motion.</summary>
public sealed record StopResult
{
    /// <summary>The motion, until the axis stands and nothing more happens, or to the end of the simulated time.</summary>
    public required Trajectory Motion { get; init; }
    /// <summary>From when on the axis stands, s; null: not within the simulated time.</summary>
    public required double? Time { get; init; }
    /// <summary>How far it gets from where it began, at most, m or rad.</summary>
    public required double Distance { get; init; }
    /// <summary>The largest speed, m/s or rad/s.</summary>
    public required double PeakSpeed { get; init; }
    /// <summary>When, s.</summary>
    public required double PeakAt { get; init; }
    /// <summary>Kinetic energy at that moment, J.</summary>
    public required double Energy { get; init; }
    /// <summary>How far it goes in the direction of the load, at most, m or rad; null without a load.</summary>
    public double? Fall { get; init; }
    /// <summary>The part of it after the torque was off; null without a load, or where the torque was never off.</summary>
    public double? Drop { get; init; }
    /// <summary>What was passed first and tripped, as monitor and side; null: nothing.</summary>
    public (string Monitor, string Side)? DetectedBy { get; init; }
    /// <summary>When it tripped, s.</summary>
    public double? DetectedAt { get; init; }
    /// <summary>When the drive acted on it, s.</summary>
    public double? ActedAt { get; init; }
    /// <summary>When the torque was off, s.</summary>
    public double? OffAt { get; init; }
    /// <summary>When the brake had closed, s.</summary>
    public double? BrakedAt { get; init; }
    /// <summary>How far each limit was passed.</summary>
    public IReadOnlyList<Overrun> Overruns { get; init; } = [];
}

/// <summary>How far a limit was passed.</summary>
/// <param name="Monitor">Whose limit.</param>
/// <param name="Side">Which side.</param>
/// <param name="Amount">Beyond the limit at most, SI; negative: that much was left.</param>
/// <param name="Unit">The SI unit.</param>
public sealed record Overrun(string Monitor, string Side, double Amount, string Unit);
