using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLP, safely-limited position: trips where the position lies outside a window.</summary>
/// <remarks>
/// <para>Equation: side upper: x = p vs upper; side lower: x = -p vs -lower, shown as p and lower. On a modulo axis p is the representative nearest to the middle of the window (of two
/// the lower), and the window may wrap: 350 deg to 10 deg. Of two recordings the first counts.</para>
/// <para>Initial condition: none.</para>
/// <para>Start-up: compared from the first watching cycle on.</para>
/// <para>Pitfall: it trips where a limit has been passed, and stopping takes way: leave room for the overrun before whatever must not be reached.</para>
/// <para>Standard: SLP of IEC 61800-5-2.</para>
/// </remarks>
[Needs(Kind.Position)]
[AtLeastOneOf("lower", "upper")]
public sealed record Slp : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLP";
    /// <summary>The lower end of the window, m or rad, of any sign, not above <see cref="Upper"/> unless the axis is modulo, which needs both; default not compared.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? Lower { get; init; }
    /// <summary>The upper end of the window, m or rad, of any sign; default not compared.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? Upper { get; init; }

    internal override Measures Measure(AxisChannels axis) => axis.Modulo is null
        ? new RangeMeasures(axis.Position!, Constant.OfOptional(Lower), Constant.OfOptional(Upper), signed: true)
        : new SlpMeasures(axis.Position!, new(Lower!.Exact, Upper!.Exact, axis.Modulo));
}

/// <summary>SLP on a modulo axis: the window may wrap.</summary>
internal sealed class SlpMeasures(Measured position, ModuloWindow window) : Measures
{
    public override IReadOnlyList<Side> Sides { get; } =
        [Side.Upper(position.Unit, window.Upper) with { Turned = window.UpperAsWritten - window.Upper.Exact }, Side.Lower(position.Unit, window.Lower)];

    public override IReadOnlyList<Channel> Needs { get; } = [position.First];

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        if (!watch.IsWatching || !position.First.IsPresent(cycle.Sample)) return;
        var representative = window.Representative(position.First, cycle.Sample);
        comparisons[0].Make(representative);
        comparisons[1].Make(representative.Negated());
    }

    public override bool IsSettled => true;
}
