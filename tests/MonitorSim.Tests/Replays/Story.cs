using System.Globalization;

namespace MonitorSim.Tests.Replays;

/// <summary>Replays one axis from a recording in plain words and tells what happened, so that a whole case fits into a row of a table.</summary>
internal static class Story
{
    /// <summary>What happens, in order.</summary>
    /// <param name="stops">The members of the axis's stops, beside an empty STO unless that is among them.</param>
    /// <param name="monitor">The members of its only monitor, called <c>m</c>; empty for none.</param>
    /// <param name="recording">Columns, one a line or parted by semicolons, such as <c>v: 0 33 33.1</c>: one value a millisecond. p, v, a, q and T are position (mm),
    /// speed (mm/s), acceleration (mm/s²), force (N) and temperature (°C); P, V, A and Q are their second recordings, which may differ by anything; every longer name is a
    /// signal, and <c>reset</c> acknowledges.</param>
    /// <param name="on">The edge that acknowledges.</param>
    /// <returns>Trips (<c>3 m upper</c>), states (<c>3 TorqueOff</c>) and outputs (<c>3 m on</c>), each with its time in ms.</returns>
    public static IReadOnlyList<string> Of(string stops, string monitor, string recording, string on = "release") => Log(Replayed(stops, monitor, recording, on));

    /// <summary>The same, with the whole result.</summary>
    public static ReplayResult Replayed(string stops, string monitor, string recording, string on = "release")
    {
        var columns = recording.Split(['\n', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Column).ToArray();
        var names = columns.Select(column => column.Name).ToHashSet();
        var channels = names.Where(name => name is "p" or "v" or "a" or "q" or "T").Select(name => Channel(name, names.Contains(name.ToUpperInvariant())));
        var signals = columns.Where(column => column.Name.Length > 1).Select(column => $$""" "{{column.Name}}": { "column": "{{column.Name}}" } """);
        var sto = stops.Contains("\"STO\"", StringComparison.Ordinal) ? "" : """ "STO": {} """;
        var acknowledge = columns.Any(column => column.Name == "reset") ? $$""" "acknowledge": { "signal": "reset", "on": "{{on}}" }, """ : "";
        var plan = Bench.Plan($$"""
            "motion": "linear", "standstill": "1 mm/s", "channels": { {{string.Join(", ", channels)}} },
            "stops": { {{string.Join(", ", new[] { sto, stops }.Where(text => text.Trim().Length > 0))}} },
            "monitors": [ {{(monitor.Length == 0 ? "" : $$"""{ "name": "m", {{monitor}} }""")}} ]
            """, $$""" "signals": { {{string.Join(", ", signals)}} }, {{acknowledge}} """);
        return Replay.Run(plan, Bench.Milliseconds(columns));
    }

    /// <summary>Trips, states and outputs of one axis, by time.</summary>
    public static IReadOnlyList<string> Log(ReplayResult result, string axis = "x") =>
        [.. result.Trips.Where(trip => trip.Axis == axis).Select(trip => (trip.Time, $"{trip.Monitor} {trip.Side}"))
            .Concat(result.States.Single(states => states.Axis == axis).Changes.Select(change => (change.Time, $"{change.State}")))
            .Concat(result.Outputs.Where(output => output.Axis == axis).SelectMany(output => output.Edges.Select(edge => (edge.Time, $"{output.Monitor} {(edge.On ? "on" : "off")}"))))
            .OrderBy(entry => entry.Item1).Select(entry => string.Create(CultureInfo.InvariantCulture, $"{entry.Item1 * 1000:0.######} {entry.Item2}"))];

    private static string Channel(string name, bool hasSecond)
    {
        if (name == "T") return """ "temperature": { "column": "T", "unit": "°C" } """;
        var first = Bench.Channels(name).TrimEnd(' ', '}');
        var unit = first[(first.LastIndexOf(':') + 1)..].Trim(' ', '"');
        return hasSecond ? $$"""{{first}}, "second": { "column": "{{name.ToUpperInvariant()}}", "tolerance": "1000000 {{unit}}", "reaction": "none" } }""" : first + " }";
    }

    private static (string Name, double[] Values) Column(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        return (line[..colon].Trim(), [.. line[(colon + 1)..].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))]);
    }
}
