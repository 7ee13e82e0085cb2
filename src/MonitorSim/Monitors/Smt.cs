using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SMT, safe motor temperature: an output that is on while the temperature is allowed; trips, where the temperature exceeds the limit, only with a reaction.</summary>
/// <remarks>
/// <para>Equation: turns on where T &lt;= limit - h has held for <see cref="OnDelay"/>; turns off where T has been more than limit for <see cref="OffDelay"/>; h is the hysteresis. With a reaction
/// other than none, side upper: x = T vs limit. Of two recordings the first counts.</para>
/// <para>Initial condition: off.</para>
/// <para>Start-up: the delays of the output count from the first watching cycle on; without a temperature its condition does not hold.</para>
/// <para>Pitfall: the delays belong to the output and the filter to the trip: neither waits for the other. With reaction none, which is the default, nothing ever trips.</para>
/// <para>Standard: SMT of IEC 61800-5-2.</para>
/// </remarks>
[Needs(Kind.Temperature)]
[OutputFunction(CanTrip = true)]
public sealed record Smt : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SMT";
    /// <summary>The highest temperature allowed, °C, of any sign.</summary>
    [Kind(Kind.Temperature, Allowed.Any)] public required Quantity Limit { get; init; }
    /// <summary>How far below the limit the temperature must be to turn the output on, K, 0 or more; default 0.</summary>
    [Kind(Kind.TemperatureDifference)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long the condition must hold, without interruption, to turn the output on, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long the condition must fail, without interruption, to turn the output off, s, 0 or more; default 0.</summary>
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
