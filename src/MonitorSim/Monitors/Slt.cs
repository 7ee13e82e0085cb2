using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLT, safely-limited torque: trips where the torque or force exceeds a limit.</summary>
/// <remarks>
/// <para>Equation: x = |q|, the larger of two recordings (<see cref="Signed"/>: q of the first), vs limit.</para>
/// <para>Initial condition: none.</para>
/// <para>Start-up: compared from the first watching cycle on; torque is never derived.</para>
/// <para>Pitfall: a torque that follows from the current is that of the motor, friction and inertia of its own included, and a torque constant is a mean value: leave room.</para>
/// <para>Standard: SLT of IEC 61800-5-2 (force of linear motors).</para>
/// </remarks>
[Needs(Kind.Torque)]
public sealed record Slt : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLT";
    /// <summary>The largest torque allowed, N or N·m, 0 or more unless signed.</summary>
    [Kind(Kind.Torque, Allowed.NonNegativeUnlessSigned)] public required Quantity Limit { get; init; }
    /// <summary>Whether the quantity itself is compared instead of its magnitude; then limits may be negative; default false.</summary>
    public bool Signed { get; init; }

    internal override Measures Measure(AxisChannels axis) => new RangeMeasures(axis.Torque!, null, Constant.Of(Limit), Signed);
}


