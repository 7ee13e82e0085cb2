using MonitorSim.Motion;

namespace MonitorSim.Explain;

/// <summary>How an axis went on that left its recording: when it stands, how long and how far that took, and how fast it was.</summary>
internal static class MotionStory
{
    public static IEnumerable<string> Of(ReplayResult result) =>
        result.Simulated.Where(motion => motion.States.Count > 0).Select(motion => Of(motion, new(result.Plan.Axes[motion.Axis]), result.Plan.Axes[motion.Axis].Standstill?.Si ?? 0));

    private static string Of(SimulatedMotion motion, MotionUnits units, double standstill)
    {
        MotionState[] states = [motion.Start, .. motion.States];
        var left = $"{motion.Axis}, left to its plant at {Say.Seconds(motion.From)}, ";
        var moving = Array.FindLastIndex(states, state => Math.Abs(state.Velocity) > standstill);
        if (moving < 0) return $"{left}stands and stays where it is.";
        var end = states[Math.Min(moving + 1, states.Length - 1)];
        var way = units.Distance(Math.Abs(end.Position - motion.Start.Position));
        var peak = $"it reached {units.Velocity(states.Max(state => Math.Abs(state.Velocity)))} at most";
        return moving == states.Length - 1
            ? $"{left}still moves at {units.Velocity(Math.Abs(end.Velocity))} when the recording ends at {Say.Seconds((decimal)end.Time)}, {way} further; {peak}."
            : $"{left}stands from {Say.Seconds((decimal)end.Time)} on, {MotionUnits.Time(end.Time - motion.Start.Time)} and {way} later; {peak}.";
    }
}
