using MonitorSim.Channels;

namespace MonitorSim.Monitors;

/// <summary>A quantity between two limits: x vs upper, -x vs -lower; magnitudes, or the quantity with its sign.</summary>
internal sealed class RangeMeasures(Measured quantity, Constant? lower, Constant? upper, bool signed) : Measures
{
    private readonly int _upper = upper is null ? -1 : 0;
    private readonly int _lower = lower is null ? -1 : upper is null ? 0 : 1;

    public override IReadOnlyList<Side> Sides { get; } =
        [.. upper is null ? Enumerable.Empty<Side>() : [Side.Upper(quantity.Unit, upper)],
         .. lower is null ? Enumerable.Empty<Side>() : [Side.Lower(quantity.Unit, lower)]];

    public override IReadOnlyList<Channel> Needs { get; } = signed ? [quantity.First] : quantity.Both;

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        var k = cycle.Sample;
        if (!watch.IsWatching) return;
        if (signed ? !quantity.First.IsPresent(k) : !quantity.IsPresent(k)) return;
        if (_upper >= 0) comparisons[_upper].Make(signed ? quantity.Value(k) : quantity.Largest(k));
        if (_lower >= 0) comparisons[_lower].Make((signed ? quantity.Value(k) : quantity.Least(k)).Negated());
    }

    public override bool IsSettled => true;

    public override int FirstAbove(int side, double bound, int from, int until, Watch watch) => side == _upper
        ? quantity.FirstAbove(bound, signed, from, until)
        : quantity.FirstBelow(-bound, signed, from, until);

    public override Ranking? Ranking(int side) => side == _upper ? quantity.Ranking(signed) : quantity.Ranking(signed)?.Reversed();
}
