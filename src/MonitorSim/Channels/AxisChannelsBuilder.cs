using MonitorSim.Estimators;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Channels;

/// <summary>Builds the channels of an axis: recorded ones carried to SI and to the load, others derived.</summary>
/// <param name="name">The axis's name.</param>
/// <param name="plan">The axis.</param>
/// <param name="column">The raw numbers of a column.</param>
/// <param name="stated">The unit that the recording states for a column, or null.</param>
/// <param name="times">The times of the samples.</param>
/// <param name="wrap">What stands for a recording (of a quantity; whether it is the second one); null: the recording itself.</param>
internal sealed class AxisChannelsBuilder(string name, AxisPlan plan, Func<string, Numbers> column, Func<string, string?> stated, SampleTimes times,
    Func<Kind, bool, Channel, Channel>? wrap = null)
{
    private readonly bool _rotary = plan.Motion == AxisMotion.Rotary;

    public AxisChannels Build()
    {
        var modulo = Constant.OfOptional(plan.Modulo);
        var position = Recorded(Kind.Position, plan.Channels.Position, _rotary ? "rad" : "m");
        var travel = position is null || modulo is null ? position
            : position with { First = new UnwrappedChannel(position.First, modulo) };
        var velocity = Recorded(Kind.Velocity, plan.Channels.Velocity, _rotary ? "rad/s" : "m/s")
            ?? Derived(plan.Channels.Velocity, travel, _rotary ? "rad/s" : "m/s");
        var acceleration = Recorded(Kind.Acceleration, plan.Channels.Acceleration, _rotary ? "rad/s²" : "m/s²")
            ?? Derived(plan.Channels.Acceleration, velocity, _rotary ? "rad/s²" : "m/s²");
        return new()
        {
            Axis = name,
            Position = position,
            Travel = travel,
            Velocity = velocity,
            Acceleration = acceleration,
            Torque = Recorded(Kind.Torque, plan.Channels.Torque, null),
            Temperature = Recorded(Kind.Temperature, plan.Channels.Temperature, "°C"),
            Modulo = modulo,
            Standstill = Constant.OfOptional(plan.Standstill) ?? Constant.Zero,
        };
    }

    private Measured? Recorded(Kind kind, ChannelPlan? channel, string? unit)
    {
        if (channel?.Column is not { } raw) return null;
        var scale = ChannelScale.Of(plan, kind, channel, Stated(raw));
        unit ??= scale.Dimension == Dimension.NewtonMetre ? "N·m" : "N";
        var first = Wrapped(kind, false, new RecordedChannel(column(raw), scale.Factor, scale.Offset));
        if (channel.Second is not { } second) return new(first, null, unit);
        var other = ChannelScale.OfSecond(plan, kind, channel, Stated(second.Column));
        return new(first, Wrapped(kind, true, new RecordedChannel(column(second.Column), other.Factor, other.Offset)), unit);
    }

    private Measured? Derived(ChannelPlan? channel, Measured? source, string unit)
    {
        if (source is null) return null;
        var estimator = channel?.Estimator ?? new EstimatorPlan();
        return new(Estimator.Of(estimator, source.First, times), null, unit);
    }

    private Channel Wrapped(Kind kind, bool isSecond, Channel recording) => wrap is null ? recording : wrap(kind, isSecond, recording);

    private Unit? Stated(string raw) => stated(raw) is { } text && Unit.TryParse(text, out var unit, out _) ? unit : null;
}
