namespace MonitorSim.Motion.Envelopes;

/// <summary>What a fault that begins at one sample comes to. SI; times and distances from the fault on.</summary>
/// <param name="Sample">The sample.</param>
/// <param name="At">Its time in the recording, s.</param>
/// <param name="Direction">1 or -1: which way a runaway went (the worse of the two, where both were tried); 0: none.</param>
/// <param name="Velocity">The speed at which it began, m/s or rad/s.</param>
/// <param name="Time">Until the axis stands, s; null: not within the simulated time.</param>
/// <param name="Distance">How far it gets, at most, m or rad.</param>
/// <param name="PeakSpeed">m/s or rad/s.</param>
/// <param name="Energy">Kinetic energy at the peak, J.</param>
/// <param name="Fall">How far it goes in the direction of the load; null without a load.</param>
/// <param name="Drop">The part of it after torque off; null without a load, or where the torque was never off.</param>
/// <param name="Monitor">What tripped first; null: nothing.</param>
/// <param name="Side">Its side.</param>
/// <param name="DetectedAt">When it tripped, s.</param>
/// <param name="ActedAt">When the drive acted, s.</param>
/// <param name="OffAt">When the torque was off, s.</param>
/// <param name="BrakedAt">When the brake had closed, s.</param>
/// <param name="Overruns">How far each limit that watched was passed.</param>
public sealed record EnvelopePoint(int Sample, decimal At, int Direction, double Velocity, double? Time, double Distance, double PeakSpeed, double Energy, double? Fall, double? Drop,
    string? Monitor, string? Side, double? DetectedAt, double? ActedAt, double? OffAt, double? BrakedAt, IReadOnlyList<Overrun> Overruns)
{
    /// <summary>Whether a limit found the fault, or a stop was demanded anyhow.</summary>
    public bool IsDetected => Monitor is not null || ActedAt is not null;
}

/// <summary>The worst of one figure over a recording.</summary>
/// <param name="Figure"><c>time</c>, <c>distance</c>, <c>peak speed</c>, <c>energy</c>, <c>fall</c>, <c>drop</c>, or <c>overrun</c> of a limit.</param>
/// <param name="Limit">The limit as monitor and side, where it is an overrun.</param>
/// <param name="Value">SI.</param>
/// <param name="Unit">The SI unit.</param>
/// <param name="Point">Where it is.</param>
public sealed record WorstFigure(string Figure, (string Monitor, string Side)? Limit, double Value, string Unit, EnvelopePoint Point);
