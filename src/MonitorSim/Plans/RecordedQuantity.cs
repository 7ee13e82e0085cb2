using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>A recorded channel, or its second recording with what it takes from the first, and the units that it may have.</summary>
/// <param name="Kind">Position, velocity, acceleration, torque or temperature.</param>
/// <param name="Column">The recorded column.</param>
/// <param name="Unit">The unit of raw · scale; null where the recording states it.</param>
/// <param name="Side">Where it was recorded.</param>
/// <param name="Scale">The factor on the raw value.</param>
/// <param name="Invert">Whether the sign is turned.</param>
/// <param name="Offset">Added after that.</param>
internal sealed record RecordedQuantity(Kind Kind, string Column, Unit? Unit, RecordedSide Side, Fraction Scale, bool Invert, Quantity? Offset)
{
    public static RecordedQuantity First(Kind kind, ChannelPlan plan) =>
        new(kind, plan.Column!, plan.Unit, plan.Side, plan.Scale ?? Fraction.One, plan.Invert, plan.Offset);

    public static RecordedQuantity Second(Kind kind, ChannelPlan first, SecondChannelPlan second) => new(kind, second.Column, second.Unit ?? first.Unit,
        second.Side ?? first.Side, second.Scale ?? first.Scale ?? Fraction.One, second.Invert ?? first.Invert, second.Offset ?? first.Offset);

    /// <summary>The units that it may be recorded in. What was recorded at the motor turns, whatever the axis does.</summary>
    public KindUnits Allowed(bool rotaryAxis) => Kind switch
    {
        Kind.Torque when Side == RecordedSide.Motor => KindUnits.Of(Kind, rotary: true),
        Kind.Torque => KindUnits.TorqueOrForce,
        _ => KindUnits.Of(Kind, rotaryAxis || Side == RecordedSide.Motor),
    };

    /// <summary>The units that it has at the load, as limits and tolerances need them; null where the unit is not known yet.</summary>
    public KindUnits? AtLoad(bool rotaryAxis) => Kind switch
    {
        Kind.Torque when Side == RecordedSide.Motor => KindUnits.Of(Kind, rotaryAxis),
        Kind.Torque when Unit is null => null,
        Kind.Torque => KindUnits.Of(Kind, rotary: Unit.Dimension == Dimension.NewtonMetre),
        _ => KindUnits.Of(Kind, rotaryAxis),
    };

    /// <summary>Whether the way to the load leads over <see cref="AxisPlan.Feed"/>.</summary>
    public bool NeedsFeed(bool rotaryAxis) => !rotaryAxis && Side == RecordedSide.Motor && Kind != Kind.Temperature;
}
