using MonitorSim.Channels;

namespace MonitorSim.Monitors;

/// <summary>Two recordings of one quantity: |x1 - x2| vs tolerance; positions of a modulo axis by the shortest way round.</summary>
internal sealed class TwoChannelMeasures(Measured quantity, Constant tolerance, Constant? modulo) : Measures
{
    private readonly Constant? _half = modulo is null ? null : new(modulo.Exact / 2);
    private readonly Constant? _minusHalf = modulo is null ? null : new(-modulo.Exact / 2);

    public override IReadOnlyList<Side> Sides { get; } = [Side.Upper(quantity.Unit, tolerance)];

    public override IReadOnlyList<Channel> Needs { get; } = quantity.Both;

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        if (!watch.IsWatching || !quantity.IsPresent(cycle.Sample)) return;
        var difference = quantity.Value(cycle.Sample).Minus(quantity.Second!, cycle.Sample);
        if (modulo is not null)
        {
            var turns = (long)Math.Round(-difference.Value / modulo.Value);
            while (Reading.Compare(difference.Plus(modulo, turns), _half!) > 0) turns--;
            while (Reading.Compare(difference.Plus(modulo, turns), _minusHalf!) <= 0) turns++;
            difference = difference.Plus(modulo, turns);
        }

        comparisons[0].Make(difference.Magnitude());
    }

    public override bool IsSettled => true;
}
