using MonitorSim.Explain;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Explain;

/// <summary>Short ways to explain arrays through an axis "x" whose plan is built in C#.</summary>
internal static class ExplainBench
{
    /// <summary>Columns p (mm), v (mm/s), a (mm/s²), q (N) and T (°C), as far as they are named.</summary>
    public static Plan Plan(string columns, StopsPlan stops, params MonitorPlan[] monitors) => new()
    {
        Title = "Test bench",
        Signals = new Dictionary<string, SignalPlan> { ["gate"] = new() { Windows = [["2 ms", "1 s"]] }, ["reset"] = new() { Windows = [["6 ms", "8 ms"]] } },
        Axes = new Dictionary<string, AxisPlan>
        {
            ["x"] = new() { Standstill = "1 mm/s", Stops = stops, Monitors = monitors, Channels = Channels(columns) },
        },
    };

    public static IReadOnlyList<string> Lines(Plan plan, params (string Column, double[] Values)[] columns) =>
        Explanation.Lines(Replay.Run(plan, Bench.Milliseconds(columns)));

    private static ChannelsPlan Channels(string columns)
    {
        ChannelPlan? Of(char column, string unit) => columns.Contains(column) ? new() { Column = column.ToString(), Unit = unit } : null;
        return new() { Position = Of('p', "mm"), Velocity = Of('v', "mm/s"), Acceleration = Of('a', "mm/s²"), Torque = Of('q', "N"), Temperature = Of('T', "°C") };
    }
}
