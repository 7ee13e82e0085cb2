using Fractions;
using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>One edge of the range in which an output is on.</summary>
/// <param name="Name">What it is called among the edges of its monitor.</param>
/// <param name="Kind">The channel.</param>
/// <param name="Outer">Past it the condition fails, SI.</param>
/// <param name="Inner">From it on the condition holds with the hysteresis to spare, SI.</param>
/// <param name="Upper">Whether larger values are outside.</param>
/// <param name="Unreachable">Why nothing is outside of it; null where something is.</param>
internal sealed record OutputEdge(string Name, Kind Kind, Fraction Outer, Fraction Inner, bool Upper, string? Unreachable = null)
{
    public Target AtOuter => Target.At(Outer, Upper);
    public Target PastOuter => Target.Past(Outer, Upper);
    public Target AtInner => Target.At(Inner, Upper);
    public Target PastInner => Target.Past(Inner, Upper);

    /// <summary>The edges of a monitor's output; none where it has no output.</summary>
    public static IEnumerable<OutputEdge> Of(AxisPlan axis, MonitorPlan monitor) => monitor switch
    {
        Sca sca => OfCam(axis, sca),
        Ssm ssm => OfSpeed(ssm),
        Smt smt => [new("limit", Kind.Temperature, smt.Limit.Exact, smt.Limit.Exact - (smt.Hysteresis?.ExactDifference ?? Fraction.Zero), Upper: true)],
        _ => [],
    };

    private static IEnumerable<OutputEdge> OfCam(AxisPlan axis, Sca sca)
    {
        var hysteresis = sca.Hysteresis?.Exact ?? Fraction.Zero;
        var windows = sca.Ranges.Select(range => new ModuloWindow(range[0].Exact, range[1].Exact, Constant.OfOptional(axis.Modulo))).ToList();
        for (var k = 0; k < windows.Count; k++)
        {
            var window = windows[k];
            foreach (var upper in new[] { false, true })
            {
                var edge = upper ? window.Upper.Exact : window.Lower.Exact;
                var shared = windows.Where(other => other != window).Any(other => upper ? other.Lower.Exact <= edge && other.Upper.Exact > edge : other.Lower.Exact < edge && other.Upper.Exact >= edge);
                yield return new(FormattableString.Invariant($"range {k} {(upper ? "upper" : "lower")}"), Kind.Position, edge, upper ? edge - hysteresis : edge + hysteresis, upper,
                    shared ? "another range goes on beyond it" : null);
            }
        }
    }

    private static IEnumerable<OutputEdge> OfSpeed(Ssm ssm)
    {
        var hysteresis = ssm.Hysteresis?.Exact ?? Fraction.Zero;
        if (ssm.Upper is { } upper) yield return new("upper", Kind.Velocity, upper.Exact, upper.Exact - hysteresis, Upper: true);
        if (ssm.Lower is { } lower)
        {
            yield return new("lower", Kind.Velocity, lower.Exact, lower.Exact + hysteresis, Upper: false,
                !ssm.Signed && lower.Exact == Fraction.Zero ? "no magnitude is below a lower limit of 0" : null);
        }
    }
}
