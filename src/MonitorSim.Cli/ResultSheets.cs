using MonitorSim.Explain;

namespace MonitorSim.Cli;

/// <summary>A replay's result as tables: SI, times in seconds from the recording's first sample.</summary>
internal static class ResultSheets
{
    /// <param name="result">The result.</param>
    /// <param name="trace">The recording, where the tables hold several: their first column.</param>
    public static IReadOnlyList<Sheet> Of(ReplayResult result, string? trace = null)
    {
        List<Sheet> sheets =
        [
            On("replays", [result]).Text("plan", r => r.Plan.Title).Text("planSha256", r => r.Plan.Sha256).Text("sha256", r => r.TraceSha256).Count("samples", r => r.Samples)
                .Seconds("duration_s", r => r.Duration).Text("verdict", r => r.IsTripped ? "tripped" : "clean"),
            On("trips", result.Trips).Text("axis", t => t.Axis).Text("monitor", t => t.Monitor).Text("function", t => t.Function).Text("side", t => t.Side).Count("level", t => t.Level)
                .Count("sample", t => t.Sample).Seconds("time_s", t => t.Time).Number("value", t => t.Value).Number("limit", t => t.Limit).Text("unit", t => t.Unit)
                .Number("peak", t => t.Peak).Seconds("requestedAt_s", t => t.RequestedAt).Seconds("watchingAt_s", t => t.WatchingAt).Seconds("exceededAt_s", t => t.ExceededAt)
                .Text("reaction", t => UserUnits.Reaction(t.Reaction)).Number("avoidedByLimit", t => t.AvoidedBy.Limit).Seconds("avoidedByFilterAbove_s", t => t.AvoidedBy.FilterAbove)
                .Seconds("avoidedByDelayAbove_s", t => t.AvoidedBy.DelayAbove).Flag("exact", t => t.AvoidedBy.Exact),
            On("excursions", result.Excursions).Text("axis", e => e.Axis).Text("monitor", e => e.Monitor).Text("side", e => e.Side).Seconds("from_s", e => e.From)
                .Seconds("until_s", e => e.Until).Seconds("duration_s", e => e.Duration).Number("peak", e => e.Peak).Seconds("peakAt_s", e => e.PeakAt).Flag("trips", e => e.Trips),
            On("headroom", result.Headroom).Text("axis", h => h.Axis).Text("monitor", h => h.Monitor).Text("side", h => h.Side).Count("level", h => h.Level)
                .Number("critical", h => h.Critical).Number("limit", h => h.Limit).Number("headroom", h => h.Room).Number("percent", h => h.Percent)
                .Seconds("time_s", h => h.Time).Text("unit", h => h.Unit),
            On("coverage", result.Coverage).Text("axis", c => c.Axis).Text("monitor", c => c.Monitor).Count("requests", c => c.Requests).Seconds("watched_s", c => c.Watched)
                .Count("trips", c => c.Trips),
            On("states", result.States.SelectMany(s => s.Changes.Select(change => (s.Axis, change.Time, change.State, change.Cause))))
                .Text("axis", s => s.Axis).Seconds("time_s", s => s.Time).Text("state", s => s.State.ToString()).Text("cause", s => s.Cause),
        ];
        if (result.Simulated.Count > 0)
        {
            sheets.Add(On("simulated", result.Simulated.SelectMany(m => m.States.Select(state => (m.Axis, State: state)))).Text("axis", m => m.Axis).Number("time_s", m => m.State.Time)
                .Number("position", m => m.State.Position).Number("velocity", m => m.State.Velocity).Number("acceleration", m => m.State.Acceleration).Number("torque", m => m.State.Torque));
        }

        return sheets;

        Sheet<T> On<T>(string name, IEnumerable<T> things) => trace is null ? new(name, things) : new Sheet<T>(name, things).Text("trace", _ => trace);
    }
}
