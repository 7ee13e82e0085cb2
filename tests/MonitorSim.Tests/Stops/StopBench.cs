using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Stops;

/// <summary>Short ways to replay stops of one axis: a limit of 100 mm/s whose trip demands the stop under test.</summary>
internal static class StopBench
{
    /// <summary>Replays an axis with the columns p, v, a and q, one sample a millisecond.</summary>
    /// <param name="stops">The members of its stops, beside an empty STO unless that is among them.</param>
    /// <param name="values">The recorded columns.</param>
    /// <param name="reaction">What the limit of 100 mm/s, called "fast", demands.</param>
    /// <param name="head">Members of the plan beside the axes, each followed by a comma.</param>
    public static ReplayResult Replayed(string stops, (string Column, double[] Values)[] values, string reaction = "stop 1", string head = "")
    {
        var sto = stops.Contains("STO", StringComparison.Ordinal) ? "" : """ "STO": {}, """;
        return Replay.Run(Bench.Plan($$"""
            "motion": "linear", "standstill": "1 mm/s", "channels": { {{Bench.Channels(string.Concat(values.Select(v => v.Column)))}} },
            "stops": { {{sto}} {{stops}} },
            "monitors": [ { "name": "fast", "function": "SLS", "limit": "100 mm/s", "reaction": "{{reaction}}" } ]
            """, head), Bench.Milliseconds(values));
    }

    /// <summary>The changes of state, in milliseconds.</summary>
    public static (decimal Time, AxisState State)[] Changes(this ReplayResult result, string axis = "x") =>
        [.. result.States.Where(s => s.Axis == axis).SelectMany(s => s.Changes).Select(change => (change.Time * 1000, change.State))];

    /// <summary>The trips of stops, in milliseconds.</summary>
    public static (decimal Time, string Stop, string Side)[] StopTrips(this ReplayResult result) =>
        [.. result.Trips.Where(trip => trip.Monitor != "fast").Select(trip => (trip.Time * 1000, trip.Monitor, trip.Side))];
}
