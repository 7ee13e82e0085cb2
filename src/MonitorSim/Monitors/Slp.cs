using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SLP, safely-limited position.</summary>
[Needs(Kind.Position)]
[AtLeastOneOf("lower", "upper")]
public sealed record Slp : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SLP";
    /// <summary>The least allowed; null: not compared.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? Lower { get; init; }
    /// <summary>The largest allowed; null: not compared.</summary>
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
