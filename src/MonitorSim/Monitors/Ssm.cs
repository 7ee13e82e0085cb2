using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SSM, safe speed monitor: an output that is on while the speed is inside a range.</summary>
[Needs(Kind.Velocity)]
[AtLeastOneOf("lower", "upper")]
[OutputFunction(CanTrip = false)]
public sealed record Ssm : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SSM";
    /// <summary>The least allowed; null: not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Lower { get; init; }
    /// <summary>The largest allowed; null: not compared.</summary>
    [Kind(Kind.Velocity, Allowed.NonNegativeUnlessSigned)] public Quantity? Upper { get; init; }
    /// <summary>Compares the quantity itself instead of its magnitude.</summary>
    public bool Signed { get; init; }
    /// <summary>How far inside its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Velocity)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long its condition must fail to turn the output off; default 0.</summary>
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
