namespace MonitorSim.Tuning;

/// <summary>From the moment a fault passes a limit until the axis stands: detection, reaction, stopping. Constant acceleration by the fault until the drive
/// acts, then the stop. SI throughout: m (or rad), s.</summary>
/// <remarks>With T = filter + cycle + input delay + reaction delay: peak v_p = v + a·T; travel v·T + a·T²/2 + way of the stop from v_p; time T + time of the stop from
/// v_p. Speed that passes the limit just after a cycle is seen one cycle later, and a filter ends at a cycle, so that it counts in whole cycles. A design aid: the
/// figures of the real machine come from measurements on it.</remarks>
public sealed record StoppingChain
{
    /// <summary>The limit, m/s or rad/s, >= 0.</summary>
    public required double Limit { get; init; }
    /// <summary>How long an exceedance must last, s, >= 0.</summary>
    public double Filter { get; init; }
    /// <summary>The monitor's cycle, s, >= 0; 0 watches without interruption.</summary>
    public double Cycle { get; init; }
    /// <summary>The age of the newest sample seen, s, >= 0.</summary>
    public double InputDelay { get; init; }
    /// <summary>From the trip to the moment the drive acts, s, >= 0.</summary>
    public double ReactionDelay { get; init; }
    /// <summary>What the fault accelerates with until then, m/s² or rad/s², >= 0.</summary>
    public double FaultAcceleration { get; init; }
    /// <summary>How the axis then stops.</summary>
    public required IStopping Stopping { get; init; }

    /// <summary>The filter in whole cycles, s: an exceedance of 10 ms is known at the third cycle of 4 ms after its first.</summary>
    public double FilterInCycles => Cycle > 0 ? Math.Ceiling(Filter / Cycle - 1e-9) * Cycle : Filter;

    /// <summary>From passing the limit to the moment the drive acts, s.</summary>
    public double ResponseTime => FilterInCycles + Cycle + InputDelay + ReactionDelay;

    /// <summary>The speed when the drive acts.</summary>
    public double PeakSpeed => Limit + FaultAcceleration * ResponseTime;

    /// <summary>From the moment the drive acts to standstill, s.</summary>
    public double StoppingTime => Stopping.Time(PeakSpeed);

    /// <summary>From passing the limit to standstill, s.</summary>
    public double TotalTime => ResponseTime + StoppingTime;

    /// <summary>How far the axis moves in that time, m or rad: the overrun.</summary>
    public double Travel => (Limit + FaultAcceleration * ResponseTime / 2) * ResponseTime + Stopping.Distance(PeakSpeed);

    /// <summary>The highest speed of all, m/s or rad/s: where a load drives the axis on before a brake has closed, more than when the drive acts.</summary>
    public double HighestSpeed => Stopping.HighestSpeed(PeakSpeed);

    /// <summary>Kinetic energy at the highest speed, J.</summary>
    /// <param name="inertia">Mass, kg, or moment of inertia, kg·m².</param>
    public double Energy(double inertia) => inertia * HighestSpeed * HighestSpeed / 2;

    /// <summary>Least distance of a safeguard by S = K·T + C (the general formula of ISO 13855; K and C are the user's).</summary>
    /// <param name="approachSpeed">K, m/s. 29 CFR 1910.217(c)(3)(iii)(e) takes 63 in/s.</param>
    /// <param name="intrusion">C, m.</param>
    public double SeparationDistance(double approachSpeed, double intrusion = 0) => approachSpeed * TotalTime + intrusion;

    /// <summary>The largest limit with which a figure of the chain stays within what is allowed; null where none does, not even 0; infinite where all do.</summary>
    /// <param name="figure">What is asked of the chain; it must not fall with a rising limit.</param>
    /// <param name="allowed">The most that it may be.</param>
    public double? LargestLimit(Func<StoppingChain, double> figure, double allowed)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return Largest.Value(limit => figure(this with { Limit = limit }) <= allowed);
    }
}
