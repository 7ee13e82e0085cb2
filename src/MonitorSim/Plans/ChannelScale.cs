using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>The exact way from a recorded number to the SI value at the load side: si = raw · <see cref="Factor"/> + <see cref="Offset"/>.</summary>
/// <remarks>
/// <para>The channel's value is raw · scale, turned by invert, plus offset, in its unit. Recorded at the motor it is carried to the load:
/// position, velocity and acceleration by 1/gear (gear = motor turns to output turns), on a linear axis also by feed/(2·pi) metres a
/// radian; torque by gear, on a linear axis also by 2·pi/feed (power is the same on both sides; losses are not known).</para>
/// <para>The motor turns: units of the motor side are rotary (rev, rpm, N·m) on linear axes too. What a linear motor records is of the load
/// side.</para>
/// </remarks>
/// <param name="Factor">SI units at the load for one raw unit.</param>
/// <param name="Offset">The SI value at the load of a raw 0.</param>
/// <param name="Dimension">What it measures at the load.</param>
public sealed record ChannelScale(Fraction Factor, Fraction Offset, Dimension Dimension)
{
    /// <summary>The exact SI value at the load of a raw value.</summary>
    public Fraction ToSi(Fraction raw) => raw * Factor + Offset;

    /// <summary>The scale of a channel's first recording.</summary>
    /// <param name="axis">The axis, for its motion, gear and feed.</param>
    /// <param name="kind">Position, velocity, acceleration, torque or temperature.</param>
    /// <param name="channel">A recorded channel (with a column).</param>
    /// <param name="stated">The unit that the recording states, used where the plan gives none.</param>
    /// <exception cref="InputException">No unit in plan and recording, one of the wrong kind, or no feed where it is needed.</exception>
    public static ChannelScale Of(AxisPlan axis, Kind kind, ChannelPlan channel, Unit? stated = null) =>
        Of(axis, RecordedQuantity.First(kind, channel), stated);

    /// <summary>The scale of a channel's second recording, which takes unit, scale, offset, invert and side from the first unless it says otherwise.</summary>
    /// <inheritdoc cref="Of(AxisPlan, Kind, ChannelPlan, Unit?)"/>
    public static ChannelScale OfSecond(AxisPlan axis, Kind kind, ChannelPlan channel, Unit? stated = null) =>
        Of(axis, RecordedQuantity.Second(kind, channel, channel.Second ?? throw new ArgumentException("the channel has no second recording", nameof(channel))), stated);

    private static ChannelScale Of(AxisPlan axis, RecordedQuantity recorded, Unit? stated)
    {
        var rotary = axis.Motion == AxisMotion.Rotary;
        var allowed = recorded.Allowed(rotary);
        var unit = recorded.Unit ?? stated ?? throw Fail(recorded, "no unit in the plan and none in the recording", allowed.WouldDo);
        if (!allowed.Dimensions.Contains(unit.Dimension)) throw Fail(recorded, $"unit '{unit}' is no {allowed.Noun}", allowed.WouldDo);
        if (recorded.NeedsFeed(rotary) && axis.Feed is null) throw Fail(recorded, "recorded at the motor of a linear axis without feed", "give the axis a feed, such as 20 mm/rev");

        var factor = recorded.Invert ? -recorded.Scale : recorded.Scale;
        var offset = recorded.Offset is { } added ? added.ExactDifference : Fraction.Zero;
        var load = recorded.Side == RecordedSide.Motor ? MotorToLoad(axis, recorded.Kind) : Fraction.One;
        var dimension = (recorded with { Unit = unit }).AtLoad(rotary)!.Dimensions[0];
        return new(factor * unit.Factor * load, (offset + unit.Offset) * load, dimension);
    }

    /// <summary>SI at the load for one SI at the motor. Turns a revolution cancel: feed is metres a radian already.</summary>
    private static Fraction MotorToLoad(AxisPlan axis, Kind kind)
    {
        if (kind == Kind.Temperature) return Fraction.One;
        var motion = (axis.Motion == AxisMotion.Linear ? axis.Feed!.Exact : Fraction.One) / (axis.Gear?.MotorPerOutput ?? Fraction.One);
        return kind == Kind.Torque ? Fraction.One / motion : motion;
    }

    private static InputException Fail(RecordedQuantity recorded, string what, string fix) =>
        new(new Problem($"column '{recorded.Column}'", $"{Choice.Name(recorded.Kind)}: {what}", fix));
}
