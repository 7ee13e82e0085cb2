using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SCA, safe cam: an output that is on while the position is inside a range.</summary>
[Needs(Kind.Position)]
[OutputFunction(CanTrip = false)]
public sealed record Sca : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SCA";
    /// <summary>Pairs of from and to.</summary>
    [Kind(Kind.Position, Allowed.Any)] public required IReadOnlyList<IReadOnlyList<Quantity>> Ranges { get; init; }
    /// <summary>How far inside its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Position)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long its condition must hold to turn the output on; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long its condition must fail to turn the output off; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OffDelay { get; init; }

    internal override Reaction DefaultReaction => Plans.Reaction.None;

    internal override bool CanTrip(Reaction reaction) => false;

    internal override Measures Measure(AxisChannels axis) => new ScaMeasures(axis, this);
}

/// <summary>SCA: on while the position is inside one of the ranges.</summary>
internal sealed class ScaMeasures(AxisChannels axis, Sca plan) : OutputMeasures(plan.OnDelay, plan.OffDelay)
{
    private readonly Channel _position = axis.Position!.First;
    private readonly (ModuloWindow Whole, Constant Low, Constant High)[] _ranges = [.. plan.Ranges.Select(range =>
    {
        var whole = new ModuloWindow(range[0].Exact, range[1].Exact, axis.Modulo);
        var room = plan.Hysteresis?.Exact ?? Fraction.Zero;
        return (whole, new Constant(whole.Lower.Exact + room), new Constant(whole.Upper.Exact - room));
    })];

    public override IReadOnlyList<Channel> Needs { get; } = [axis.Position!.First];

    protected override (bool WithRoom, bool AtAll) Condition(int sample)
    {
        var (withRoom, atAll) = (false, false);
        if (!_position.IsPresent(sample)) return (false, false);
        foreach (var (whole, low, high) in _ranges)
        {
            var position = whole.Representative(_position, sample);
            withRoom |= Reading.Compare(position, low) >= 0 && Reading.Compare(position, high) <= 0;
            atAll |= Reading.Compare(position, whole.Lower) >= 0 && Reading.Compare(position, whole.Upper) <= 0;
        }

        return (withRoom, atAll);
    }
}
