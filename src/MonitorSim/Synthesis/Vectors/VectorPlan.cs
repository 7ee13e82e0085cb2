using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The plan of the vectors: the user's, but for how the recording is read.</summary>
/// <remarks>Windows of signals belong to one recording: here a column of their own takes their place. Units that the recording stated are
/// stated in the plan. Nothing is expected yet, and motion is as recorded.</remarks>
internal static class VectorPlan
{
    public static Plan Of(Plan plan)
    {
        var taken = PlannedTrace.Columns(plan).Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        var signals = plan.Signals.ToDictionary(signal => signal.Key,
            signal => signal.Value.Column is not null ? signal.Value : new SignalPlan { Column = Free(signal.Key, taken) }, StringComparer.Ordinal);
        return plan with
        {
            Signals = signals,
            Axes = plan.Axes.ToDictionary(axis => axis.Key, axis => axis.Value with { Channels = Stated(axis.Value) }, StringComparer.Ordinal),
            Trace = new()
            {
                Time = new() { Column = Free("time", taken), Unit = "ms" },
                Delimiter = ";",
                Decimal = ".",
                SkipRows = 0,
                UnitsRow = false,
                Encoding = "utf-8",
            },
            Motion = MotionSource.Recorded,
            Expect = [],
            Sha256 = null,
        };
    }

    private static string Free(string name, HashSet<string> taken)
    {
        var free = name;
        for (var number = 2; !taken.Add(free); number++) free = FormattableString.Invariant($"{name} {number}");
        return free;
    }

    private static ChannelsPlan Stated(AxisPlan axis) => axis.Channels with
    {
        Position = Stated(axis, Kind.Position, axis.Channels.Position),
        Velocity = Stated(axis, Kind.Velocity, axis.Channels.Velocity),
        Acceleration = Stated(axis, Kind.Acceleration, axis.Channels.Acceleration),
        Torque = Stated(axis, Kind.Torque, axis.Channels.Torque),
        Temperature = Stated(axis, Kind.Temperature, axis.Channels.Temperature),
    };

    private static ChannelPlan? Stated(AxisPlan axis, Kind kind, ChannelPlan? channel)
    {
        if (channel?.Column is not { } column || channel.Unit is not null) return channel;
        var rotary = axis.Motion == AxisMotion.Rotary || channel.Side == RecordedSide.Motor;
        if (channel.Side == RecordedSide.Load && UnitOfLimits(axis, kind) is { } written) return channel with { Unit = Named(column) ?? written };
        var usual = kind switch
        {
            Kind.Position => rotary ? "rad" : "m",
            Kind.Velocity => rotary ? "rad/s" : "m/s",
            Kind.Acceleration => rotary ? "rad/s²" : "m/s²",
            Kind.Torque => rotary ? "N·m" : "N",
            _ => "°C",
        };
        return channel with { Unit = Named(column) ?? Unit.Parse(usual) };
    }

    private static Unit? Named(string column) => HeaderText.Stated(column) is { } stated && Unit.TryParse(stated, out var unit, out _) ? unit : null;

    /// <summary>The unit in which the axis states its first limit of that kind, so that the limits are round numbers in the column too.</summary>
    private static Unit? UnitOfLimits(AxisPlan axis, Kind kind) =>
        axis.Monitors.Cast<object>().Append(axis.Stops).SelectMany(PlanQuantities.Of).FirstOrDefault(found => found.Kind == kind).Quantity?.Unit;
}
