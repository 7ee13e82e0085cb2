using System.Collections.Concurrent;
using System.Text;
using MonitorSim.Plans;
using MonitorSim.Synthesis.Vectors;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Synthesis.Vectors;

/// <summary>The plans that vectors are tested on: those of the demo, and plans written for it. Each is made once.</summary>
internal static class VectorPlans
{
    private static readonly ConcurrentDictionary<string, Lazy<(Plan Plan, VectorSet Set)>> Made = new();

    /// <summary>Those cases of the demo that differ in what they monitor, how they stop or how they are recorded.</summary>
    public static IReadOnlyList<string> Demo { get; } =
    [
        "blade-brake-fades", "blade-motor-warm", "blade-overspeed", "bridge-approach", "bridge-feed-range", "bridge-gate-speed", "bridge-hold", "bridge-slow-cycle",
        "bridge-stop-bad", "bridge-two-encoders", "lift-brake-slip", "lift-inching", "lift-residual", "lift-standstill", "saw-group", "turntable-direction", "turntable-noise", "turntable-window",
    ];

    public static IEnumerable<string> Written => Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "TestData", "vectors"), "*.json").Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal);

    public static (Plan Plan, VectorSet Set) Of(string name) => Made.GetOrAdd(name, static key => new(() =>
    {
        var plan = PlanReader.Read(key.EndsWith(".json", StringComparison.Ordinal)
            ? Path.Combine(AppContext.BaseDirectory, "TestData", "vectors", key) : Path.Combine(AppContext.BaseDirectory, "traces", key, "plan.json"));
        return (plan, BoundaryVectors.Of(plan));
    })).Value;

    /// <summary>Replays a vector's file with a plan, as <c>check</c> does.</summary>
    public static ReplayResult Replayed(BoundaryVector vector, Plan plan)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(vector.Csv));
        return Replay.Run(plan, TraceReader.Read(stream, vector.Name, PlannedTrace.DialectOf(plan.Trace), PlannedTrace.Columns(plan)));
    }
}
