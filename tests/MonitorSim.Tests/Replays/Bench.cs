using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

/// <summary>Short ways to replay arrays through one axis.</summary>
internal static class Bench
{
    /// <summary>A recording with one sample a millisecond.</summary>
    public static Trace Milliseconds(params (string Column, double[] Values)[] columns) => Every(1, columns);

    /// <summary>A recording with an even period.</summary>
    public static Trace Every(int milliseconds, params (string Column, double[] Values)[] columns) =>
        At([.. Enumerable.Range(0, columns[0].Values.Length).Select(k => k * milliseconds * 1_000_000L)], columns);

    /// <summary>A recording with the given times.</summary>
    public static Trace At(long[] nanoseconds, params (string Column, double[] Values)[] columns) =>
        new("array", nanoseconds, [.. columns.Select(column => new NumberColumn(column.Column, null, column.Values))]);

    /// <summary>A plan with one axis.</summary>
    /// <param name="axis">The members of the axis, as JSON without the brackets around them.</param>
    /// <param name="head">The members of the plan beside the axis, each followed by a comma.</param>
    public static Plan Plan(string axis, string head = "") =>
        PlanReader.Parse($$"""{ "plan": 1, {{head}} "axes": { "x": { {{axis}} } } }""");

    /// <summary>A plan for a linear axis whose column "p" holds positions in mm, "v" speeds in mm/s, "a" accelerations in mm/s² and "q"
    /// forces in N, as far as they are named.</summary>
    /// <param name="columns">Which of the letters p, v, a and q are recorded.</param>
    /// <param name="monitor">The members of its only monitor, called "m".</param>
    /// <param name="head">The members of the plan beside the axis, each followed by a comma.</param>
    public static Plan Linear(string columns, string monitor, string head = "") => Plan($$"""
        "motion": "linear", "standstill": "1 mm/s", "channels": { {{Channels(columns)}} }, "stops": { "STO": {} },
        "monitors": [ { "name": "m", "reaction": "none", {{monitor}} } ]
        """, head);

    /// <summary>The channels for the letters p, v, a and q.</summary>
    public static string Channels(string columns) => string.Join(", ", columns.Select(column => column switch
    {
        'p' => """ "position": { "column": "p", "unit": "mm" } """,
        'v' => """ "velocity": { "column": "v", "unit": "mm/s" } """,
        'a' => """ "acceleration": { "column": "a", "unit": "mm/s²" } """,
        'q' => """ "torque": { "column": "q", "unit": "N" } """,
        _ => throw new ArgumentException($"no column '{column}'", nameof(columns)),
    }));

    /// <summary>The times of the trips of one side, in milliseconds.</summary>
    public static decimal[] TripsOf(this ReplayResult result, string monitor, string side) =>
        [.. result.Trips.Where(trip => trip.Monitor == monitor && trip.Side == side).Select(trip => trip.Time * 1000)];
}
