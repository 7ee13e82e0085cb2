using System.Globalization;
using System.Text;

namespace MonitorSim.Cli;

/// <summary>A result as CSV files for spreadsheets. Text that a spreadsheet would take for a formula is written with a leading apostrophe.</summary>
internal static class ResultCsv
{
    public static void Write(Terminal terminal, ReplayResult result, string folder)
    {
        Table(terminal, Path.Combine(folder, "trips.csv"), ["axis", "monitor", "function", "side", "level", "sample", "time_s", "value", "limit", "unit", "peak", "requestedAt_s",
                "watchingAt_s", "exceededAt_s", "reaction", "avoidedByLimit", "avoidedByFilterAbove_s", "avoidedByDelayAbove_s", "exact"],
            result.Trips.Select(t => new object?[] { t.Axis, t.Monitor, t.Function, t.Side, t.Level, t.Sample, t.Time, t.Value, t.Limit, t.Unit, t.Peak, t.RequestedAt,
                t.WatchingAt, t.ExceededAt, Explain.UserUnits.Reaction(t.Reaction), t.AvoidedBy.Limit, t.AvoidedBy.FilterAbove, t.AvoidedBy.DelayAbove, t.AvoidedBy.Exact }));
        Table(terminal, Path.Combine(folder, "excursions.csv"), ["axis", "monitor", "side", "from_s", "until_s", "duration_s", "peak", "peakAt_s", "trips"],
            result.Excursions.Select(e => new object?[] { e.Axis, e.Monitor, e.Side, e.From, e.Until, e.Duration, e.Peak, e.PeakAt, e.Trips }));
        Table(terminal, Path.Combine(folder, "headroom.csv"), ["axis", "monitor", "side", "level", "critical", "limit", "headroom", "percent", "time_s", "unit"],
            result.Headroom.Select(h => new object?[] { h.Axis, h.Monitor, h.Side, h.Level, h.Critical, h.Limit, h.Room, h.Percent, h.Time, h.Unit }));
        Table(terminal, Path.Combine(folder, "coverage.csv"), ["axis", "monitor", "requests", "watched_s", "trips"],
            result.Coverage.Select(c => new object?[] { c.Axis, c.Monitor, c.Requests, c.Watched, c.Trips }));
        Table(terminal, Path.Combine(folder, "states.csv"), ["axis", "time_s", "state", "cause"],
            result.States.SelectMany(s => s.Changes.Select(c => new object?[] { s.Axis, c.Time, c.State.ToString(), c.Cause })));
        if (result.Simulated.Count == 0) return;
        Table(terminal, Path.Combine(folder, "simulated.csv"), ["axis", "time_s", "position", "velocity", "acceleration", "torque"],
            result.Simulated.SelectMany(m => m.States.Select(s => new object?[] { m.Axis, s.Time, s.Position, s.Velocity, s.Acceleration, s.Torque })));
    }

    /// <summary>Writes one CSV file.</summary>
    internal static void Table(Terminal terminal, string path, string[] heads, IEnumerable<object?[]> rows) => terminal.Write(path, stream =>
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine(string.Join(',', heads));
        foreach (var row in rows) writer.WriteLine(string.Join(',', row.Select(Cell)));
    });

    internal static string Cell(object? value)
    {
        if (value is not string text) return value is bool flag ? flag ? "true" : "false" : Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
        if (text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal)) text = "'" + text;
        return text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
    }
}
