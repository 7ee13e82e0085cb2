using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>SCA, safe cam: an output that is on while the position is inside a range; it never trips.</summary>
/// <remarks>
/// <para>Equation: turns on where from + h &lt;= p &lt;= to - h holds for one range and has held for <see cref="OnDelay"/>; turns off where from &lt;= p &lt;= to has held for none of them during
/// <see cref="OffDelay"/>; h is the hysteresis. On a modulo axis p is the representative nearest to the middle of each range, which may wrap. Of two recordings the first counts.</para>
/// <para>Initial condition: off.</para>
/// <para>Start-up: the delays count from the first watching cycle on; before it, and without a request, the output is off.</para>
/// <para>Pitfall: ranges that touch do not add up: with a hysteresis, each needs room within itself; and whoever reads the output in a request sees it one cycle later.</para>
/// <para>Standard: SCA of IEC 61800-5-2.</para>
/// </remarks>
[Needs(Kind.Position)]
[OutputFunction(CanTrip = false)]
public sealed record Sca : MonitorPlan
{
    /// <inheritdoc/>
    public override string Function => "SCA";
    /// <summary>One or more pairs of from and to, m or rad, of any sign, from not above to unless the axis is modulo.</summary>
    [Kind(Kind.Position, Allowed.Any)] public required IReadOnlyList<IReadOnlyList<Quantity>> Ranges { get; init; }
    /// <summary>How far inside a range the position must be to turn the output on, m or rad, 0 or more, at most half of the widest range; default 0.</summary>
    [Kind(Kind.Position)] public Quantity? Hysteresis { get; init; }
    /// <summary>How long the condition must hold, without interruption, to turn the output on, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? OnDelay { get; init; }
    /// <summary>How long the condition must fail, without interruption, to turn the output off, s, 0 or more; default 0.</summary>
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
