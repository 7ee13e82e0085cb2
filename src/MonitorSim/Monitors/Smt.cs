using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SMT, safe motor temperature: an output that is on while the temperature is allowed; trips only with a reaction.</summary>
[Needs(Kind.Temperature)]
[OutputFunction(CanTrip = true)]
public sealed record Smt : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SMT";
    /// <summary>The highest temperature allowed.</summary>
    [Kind(Kind.Temperature, Allowed.Any)] public required Quantity Limit { get; init; }
    /// <summary>How far inside its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.TemperatureDifference)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long its condition must fail to turn the output off; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OffDelay { get; init; }

    internal override Reaction DefaultReaction => Plans.Reaction.None;

    internal override bool CanTrip(Reaction reaction) => reaction != Plans.Reaction.None;

    internal override Measures Measure(AxisChannels axis) => new SmtMeasures(axis.Temperature!, this);
}

/// <summary>SMT: on while the temperature is allowed, and a limit like any other where it has a reaction.</summary>
internal sealed class SmtMeasures(Measured temperature, Smt plan) : OutputMeasures(plan.OnDelay, plan.OffDelay)
{
    private readonly Constant _limit = Constant.Of(plan.Limit);
    private readonly Constant _low = new(plan.Limit.Exact - (plan.Hysteresis?.ExactDifference ?? Fraction.Zero));

    public override IReadOnlyList<Side> Sides { get; } = [Side.Upper(temperature.Unit, Constant.Of(plan.Limit))];

    public override IReadOnlyList<Channel> Needs { get; } = [temperature.First];

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons)
    {
        if (watch.IsWatching && temperature.First.IsPresent(cycle.Sample)) comparisons[0].Make(temperature.Value(cycle.Sample));
    }

    public override int FirstAbove(int side, double bound, int from, int until, Watch watch) =>
        temperature.First.FirstOutside(double.NegativeInfinity, bound, from, until);

    protected override (bool WithRoom, bool AtAll) Condition(int sample)
    {
        if (!temperature.First.IsPresent(sample)) return (false, false);
        var value = temperature.Value(sample);
        return (Reading.Compare(value, _low) <= 0, Reading.Compare(value, _limit) <= 0);
    }
}
