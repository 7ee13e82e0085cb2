using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>The comparison of two recordings of a channel: a monitor of its own, always requested.</summary>
internal static class TwoChannels
{
    public static IEnumerable<MonitorRun> Of(AxisPlan plan, AxisChannels channels)
    {
        foreach (var (name, channel, quantity) in new[]
        {
            ("position", plan.Channels.Position, channels.Position), ("velocity", plan.Channels.Velocity, channels.Velocity),
            ("acceleration", plan.Channels.Acceleration, channels.Acceleration), ("torque", plan.Channels.Torque, channels.Torque),
            ("temperature", plan.Channels.Temperature, channels.Temperature),
        })
        {
            if (channel?.Second is not { } second) continue;
            var tolerance = new Constant(second.Tolerance.ExactDifference);
            yield return new(channels.Axis, $"{name} two channels", "two channels",
                () => new TwoChannelMeasures(quantity!, tolerance, name == "position" ? channels.Modulo : null),
                0, second.Time?.Nanoseconds ?? 0, second.Reaction ?? Reaction.Stop0) { HasDelay = true };
        }
    }
}
