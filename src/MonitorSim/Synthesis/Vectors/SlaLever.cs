using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The acceleration against a limit of SLA in its own quadrant: speeding up (a·v >= 0) or slowing down (a·v &lt; 0).</summary>
/// <remarks>The speed begins so high that slowing down never reaches 0; speeding up begins at 0.</remarks>
internal sealed class SlaLever(Bench bench, string axis, string side, Fraction limit, bool magnitude, bool slowing, bool negative)
    : ChannelLever(bench, axis, side, Kind.Acceleration, limit, upper: true, magnitude, negative)
{
    public override void Prepare(Script script, int cycles)
    {
        var speed = (Limit.Abs() + 1) * (cycles + 10) * Bench.Clock.Period / 1_000_000_000;
        script.Start(Axis, Kind.Velocity, slowing == IsNegative ? speed : -speed);
        Rest(script);
    }
}
