namespace MonitorSim.Tuning;

/// <summary>From the moment a fault passes a limit until the axis stands: detection, reaction, stopping. Constant acceleration by the fault until the drive
/// acts, constant deceleration after that. SI throughout: m (or rad), s.</summary>
/// <remarks>With T = filter + cycle + input delay + reaction delay: peak v_p = v + a·T; travel v·T + a·T²/2 + v_p²/(2·d); time T + v_p/d. A design aid: the
/// figures of the real machine come from measurements on it.</remarks>
public sealed record StoppingChain
{
    /// <summary>The limit, m/s or rad/s, >= 0.</summary>
    public required double Limit { get; init; }
    /// <summary>How long an exceedance must last, s, >= 0.</summary>
    public double Filter { get; init; }
    /// <summary>The monitor's cycle, s, >= 0: an exceedance may begin just after one.</summary>
    public double Cycle { get; init; }
    /// <summary>The age of the newest sample seen, s, >= 0.</summary>
    public double InputDelay { get; init; }
    /// <summary>From the trip to the moment the drive acts, s, >= 0.</summary>
    public double ReactionDelay { get; init; }
    /// <summary>What the fault accelerates with until then, m/s² or rad/s², >= 0.</summary>
    public double FaultAcceleration { get; init; }
    /// <summary>What the axis then stops with, m/s² or rad/s², > 0.</summary>
    public required double Deceleration { get; init; }

    /// <summary>From passing the limit to the moment the drive acts, s.</summary>
    public double ResponseTime => Filter + Cycle + InputDelay + ReactionDelay;

    /// <summary>The speed when the drive acts.</summary>
    public double PeakSpeed => Limit + FaultAcceleration * ResponseTime;

    /// <summary>From passing the limit to standstill, s.</summary>
    public double TotalTime => ResponseTime + PeakSpeed / Deceleration;

    /// <summary>How far the axis moves in that time, m or rad.</summary>
    public double Travel => (Limit + FaultAcceleration * ResponseTime / 2) * ResponseTime + PeakSpeed * PeakSpeed / (2 * Deceleration);

    /// <summary>Kinetic energy at the peak, J.</summary>
    /// <param name="inertia">Mass, kg, or moment of inertia, kg·m².</param>
    public double Energy(double inertia) => inertia * PeakSpeed * PeakSpeed / 2;

    /// <summary>Least distance of a safeguard by S = K·T + C (the general formula of ISO 13855; K and C are the user's).</summary>
    /// <param name="approachSpeed">K, m/s. 29 CFR 1910.217(c)(3)(iii)(e) takes 63 in/s.</param>
    /// <param name="intrusion">C, m.</param>
    public double SeparationDistance(double approachSpeed, double intrusion = 0) => approachSpeed * TotalTime + intrusion;

    /// <summary>The largest limit whose travel stays within the allowed one; null where none does, not even 0.</summary>
    /// <param name="allowedTravel">m or rad, >= 0.</param>
    public double? LargestLimit(double allowedTravel)
    {
        // travel(v) = v²/(2d) + v·T·(1 + a/d) + a·T²/2·(1 + a/d): a parabola that rises for v >= 0.
        var (t, a, d) = (ResponseTime, FaultAcceleration, Deceleration);
        var linear = t * (1 + a / d);
        var constant = a * t / 2 * linear - allowedTravel;
        if (constant > 0) return null;
        // The root that does not cancel.
        return -2 * constant / (linear + Math.Sqrt(linear * linear - 2 * constant / d));
    }

    /// <summary>The room of this limit against an allowed travel, and what each lever alone would give.</summary>
    /// <param name="allowedTravel">m or rad.</param>
    public IReadOnlyList<Lever> Levers(double allowedTravel) =>
    [
        new("as it is", LargestLimit(allowedTravel)),
        new("no filter", (this with { Filter = 0 }).LargestLimit(allowedTravel)),
        new("half the cycle", (this with { Cycle = Cycle / 2 }).LargestLimit(allowedTravel)),
        new("no input delay", (this with { InputDelay = 0 }).LargestLimit(allowedTravel)),
        new("half the reaction delay", (this with { ReactionDelay = ReactionDelay / 2 }).LargestLimit(allowedTravel)),
        new("twice the deceleration", (this with { Deceleration = 2 * Deceleration }).LargestLimit(allowedTravel)),
    ];
}

/// <summary>What one change of the stopping chain allows.</summary>
/// <param name="Change">The change, everything else as it is.</param>
/// <param name="LargestLimit">The largest limit that keeps the allowed travel, SI; null where none does.</param>
public sealed record Lever(string Change, double? LargestLimit);
