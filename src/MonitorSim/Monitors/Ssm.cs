using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SSM, safe speed monitor: an output that is on while the speed is inside a range; it never trips.</summary>
/// <remarks>
/// <para>Equation: turns on where lower + h &lt;= |v| &lt;= upper - h has held for <see cref="OnDelay"/>; turns off where lower &lt;= |v| &lt;= upper has failed for <see cref="OffDelay"/>; h is the
/// hysteresis, a limit that is not set always holds. Of two recordings the smaller counts for lower, the larger for upper (<see cref="Signed"/>: v of the first).</para>
/// <para>Initial condition: off.</para>
/// <para>Start-up: the delays count from the first watching cycle on; before it, and without a request, the output is off. Without a speed the condition does not hold.</para>
/// <para>Pitfall: off means too fast, too slow, not requested or not known: let nothing dangerous depend on off. Whoever reads the output in a request sees it one cycle later.</para>
/// <para>Standard: SSM of IEC 61800-5-2, where it tells that the speed is below a limit.</para>
/// </remarks>
[Needs(Kind.Velocity)]
[AtLeastOneOf("lower", "upper")]
[OutputFunction(CanTrip = false)]
public sealed record Ssm : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SSM";
    /// <summary>The least speed for on, m/s or rad/s, 0 or more unless signed, not above <see cref="Upper"/>; default not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Lower { get; init; }
    /// <summary>The largest speed for on, m/s or rad/s, 0 or more unless signed; default not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Upper { get; init; }
    /// <summary>Whether the quantity itself is compared instead of its magnitude; then limits may be negative; default false.</summary>
    public bool Signed { get; init; }
    /// <summary>How far inside the range the speed must be to turn the output on, m/s or rad/s, 0 or more, at most half of the range where that has two ends; default 0.</summary>
    [Kind(Kind.Velocity)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long the condition must hold, without interruption, to turn the output on, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long the condition must fail, without interruption, to turn the output off, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OffDelay { get; init; }

    internal override Reaction DefaultReaction => Plans.Reaction.None;

    internal override bool CanTrip(Reaction reaction) => false;

    internal override Measures Measure(AxisChannels axis) => new SsmMeasures(axis.Velocity!, this);
}

/// <summary>SSM: on while lower &lt;= |v| &lt;= upper.</summary>
internal sealed class SsmMeasures(Measured velocity, Ssm plan) : OutputMeasures(plan.OnDelay, plan.OffDelay)
{
    private readonly Constant? _lower = Constant.OfOptional(plan.Lower), _upper = Constant.OfOptional(plan.Upper);
    private readonly Constant? _low = plan.Lower is null ? null : new(plan.Lower.Exact + (plan.Hysteresis?.Exact ?? Fraction.Zero));
    private readonly Constant? _high = plan.Upper is null ? null : new(plan.Upper.Exact - (plan.Hysteresis?.Exact ?? Fraction.Zero));

    public override IReadOnlyList<Channel> Needs { get; } = plan.Signed ? [velocity.First] : velocity.Both;

    protected override (bool WithRoom, bool AtAll) Condition(int sample)
    {
        if (plan.Signed ? !velocity.First.IsPresent(sample) : !velocity.IsPresent(sample)) return (false, false);
        var least = plan.Signed ? velocity.Value(sample) : velocity.Least(sample);
        var largest = plan.Signed ? velocity.Value(sample) : velocity.Largest(sample);
        return (IsBetween(least, _low, largest, _high), IsBetween(least, _lower, largest, _upper));
    }

    private static bool IsBetween(in Reading least, Constant? lower, in Reading largest, Constant? upper) =>
        (lower is null || Reading.Compare(least, lower) >= 0) && (upper is null || Reading.Compare(largest, upper) <= 0);
}
