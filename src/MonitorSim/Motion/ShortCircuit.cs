using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>Braking torque of a motor whose windings are short-circuited, over speed, of the load side.</summary>
public abstract record ShortCircuit
{
    private protected ShortCircuit() { }

    /// <summary>The torque at a speed, against the motion, N or N·m.</summary>
    /// <param name="velocity">m/s or rad/s, with its sign.</param>
    public abstract double Torque(double velocity);

    internal static ShortCircuit? Of(ShortCircuitPlan? plan, double motorPerLoad) =>
        plan is null ? null
        : plan.Table is { } table ? new TableBraking([.. table.Select(point => (point.Speed.Si, point.Torque.Si))])
        : new MagnetBraking(plan.Resistance!.Si, plan.Inductance!.Si, plan.Flux!.Si, plan.PolePairs!.Value, motorPerLoad);
}

/// <summary>A permanent-magnet synchronous machine with short-circuited windings, in steady state.</summary>
/// <remarks>
/// <para>T = -1.5·p·ψ²·ωe·R/(R² + ωe²·L²) with ωe = p·ωm and Ld = Lq = L: from R·id = ωe·L·iq, R·iq = -ωe·(L·id + ψ) and T = 1.5·p·ψ·iq (derived from the
/// voltage equations in rotor coordinates, such as in P. Pillay, R. Krishnan, IEEE Trans. Ind. Appl. 25 (1989) 265).</para>
/// <para>Pitfall: it brakes most, with 0.75·p·ψ²/L, at ωe = R/L, and less at every higher speed. Transient currents are not modelled.</para>
/// </remarks>
/// <param name="Resistance">R of a phase, with leads, Ω, > 0.</param>
/// <param name="Inductance">L of a phase, H, >= 0.</param>
/// <param name="Flux">ψ, flux linkage of the magnets, amplitude, V·s.</param>
/// <param name="PolePairs">p, >= 1.</param>
/// <param name="MotorPerLoad">Motor angle for one rad or m of the load.</param>
public sealed record MagnetBraking(double Resistance, double Inductance, double Flux, int PolePairs, double MotorPerLoad = 1) : ShortCircuit
{
    /// <inheritdoc/>
    public override double Torque(double velocity)
    {
        var electrical = PolePairs * MotorPerLoad * velocity;
        var reactance = electrical * Inductance;
        return -1.5 * PolePairs * Flux * Flux * electrical * Resistance / (Resistance * Resistance + reactance * reactance) * MotorPerLoad;
    }
}

/// <summary>A braking torque by points, linear between them; from nothing at rest to the first one, constant after the last one.</summary>
/// <remarks>A first point at speed 0 acts like dry friction there.</remarks>
/// <param name="Points">Speeds, m/s or rad/s, rising from >= 0, and torques, N or N·m, >= 0.</param>
public sealed record TableBraking(IReadOnlyList<(double Speed, double Torque)> Points) : ShortCircuit
{
    /// <inheritdoc/>
    public override double Torque(double velocity)
    {
        var speed = Math.Abs(velocity);
        var band = BandOf(speed, rising: false);
        return -Math.Sign(velocity) * (band.Constant + band.Slope * speed);
    }

    /// <summary>What it holds with at rest.</summary>
    internal double AtRest => Points[0].Speed > 0 ? 0 : Points[0].Torque;

    /// <summary>The piece of the curve that a speed is on: torque = constant + slope·speed between two speeds.</summary>
    /// <param name="speed">>= 0.</param>
    /// <param name="rising">Of two pieces that meet at this speed, the upper one.</param>
    internal (double From, double Until, double Constant, double Slope) BandOf(double speed, bool rising)
    {
        var (from, torque) = (0.0, AtRest);
        foreach (var (next, nextTorque) in Points)
        {
            if (next > 0 && (rising ? speed < next : speed <= next))
            {
                var slope = (nextTorque - torque) / (next - from);
                return (from, next, torque - slope * from, slope);
            }

            (from, torque) = (next, nextTorque);
        }

        return (from, double.PositiveInfinity, torque, 0);
    }
}
