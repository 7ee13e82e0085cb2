using System.Globalization;
using MonitorSim.Explain;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Reports;

/// <summary>The machine as a plan describes it, in words.</summary>
internal static class MachineTexts
{
    /// <summary>How an axis moves.</summary>
    public static string Motion(AxisPlan axis) => string.Join(", ", Parts(
        Choice.Name(axis.Motion),
        axis.Modulo is { } modulo ? $"modulo {modulo}" : null,
        axis.Feed is { } feed ? $"feed {feed}" : null,
        axis.Gear is { } gear ? $"gear {gear}" : null,
        axis.Standstill is { } standstill ? $"stands at or below {standstill}" : null));

    /// <summary>The quantities of an axis and where they come from.</summary>
    public static IReadOnlyList<(string Quantity, string Source)> Channels(AxisPlan axis)
    {
        var channels = axis.Channels;
        return
        [
            .. new[] { ("position", channels.Position), ("velocity", channels.Velocity), ("acceleration", channels.Acceleration), ("torque", channels.Torque), ("temperature", channels.Temperature) }
                .Where(pair => pair.Item2 is not null).Select(pair => (pair.Item1, Source(pair.Item2!))),
        ];
    }

    /// <summary>The limits of a monitor, as the plan states them.</summary>
    public static string Limits(ReplayResult result, string axis, MonitorPlan monitor)
    {
        var units = new UserUnits(result.Plan);
        return string.Join("; ", result.Headroom.Where(room => room.Axis == axis && room.Monitor == monitor.Name)
            .Select(room => $"{room.Side}{LevelText(room.Level)} {units.Text(axis, monitor.Name, room.Side, room.Level, room.Limit, room.Unit)}"));
    }

    /// <summary>A level as people count them, from 0 as in the plan; empty where there are none.</summary>
    public static string LevelText(int? level) => level is { } k ? $" (level {k.ToString(CultureInfo.InvariantCulture)})" : "";

    private static string Source(ChannelPlan channel) => string.Join(", ", Parts(
        channel.Column is { } column ? $"column “{column}”" : $"derived from {channel.From} by {Estimator(channel.Estimator)}",
        channel.Unit is { } unit ? $"in {unit}" : null,
        channel.Side == RecordedSide.Motor ? "at the motor" : null,
        channel.Scale is { } scale ? $"times {NumberText.Exact(scale)}" : null,
        channel.Invert ? "inverted" : null,
        channel.Offset is { } offset ? $"plus {offset}" : null,
        channel.Second is { } second ? $"and column “{second.Column}”, which may differ by {second.Tolerance}" : null));

    private static string Estimator(EstimatorPlan? estimator)
    {
        var plan = estimator ?? new EstimatorPlan();
        return string.Join(", ", Parts(Choice.Name(plan.Name), plan.Samples is { } samples ? Say.Count(samples, "sample") : null,
            plan.Degree is { } degree ? $"degree {degree.ToString(CultureInfo.InvariantCulture)}" : null, plan.Time?.ToString()));
    }

    private static IEnumerable<string> Parts(params string?[] parts) => parts.OfType<string>();
}
