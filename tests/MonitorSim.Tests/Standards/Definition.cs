using System.Globalization;
using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Standards;

/// <summary>One sentence of a standard as a case: an axis, a recording, and everything that has to happen.</summary>
/// <param name="Name">The function or category, and what is shown of it.</param>
/// <param name="Sentence">What the standard says, in our own words.</param>
/// <param name="Stops">The members of the axis's stops, beside an empty STO unless that is among them.</param>
/// <param name="Monitor">The members of its only monitor, called <c>m</c>; empty for none.</param>
/// <param name="Recording">One line a column, one value a millisecond. p, v, a, q and T are position (mm), speed (mm/s), acceleration (mm/s²), force (N) and
/// temperature (°C); every other column is a signal of that name, and <c>reset</c> acknowledges on its release.</param>
/// <param name="Happens">Trips (<c>3 m upper</c>), states (<c>3 TorqueOff</c>) and outputs (<c>3 m on</c>), each with its time in ms, in order.</param>
public sealed record Definition(string Name, string Sentence, string Stops, string Monitor, string Recording, params IReadOnlyList<string> Happens)
{
    /// <summary>All that happened.</summary>
    public IReadOnlyList<string> Replayed()
    {
        var columns = Recording.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Column).ToArray();
        var channels = columns.Where(column => column.Name.Length == 1)
            .Select(column => column.Name == "T" ? """ "temperature": { "column": "T", "unit": "°C" } """ : Bench.Channels(column.Name));
        var signals = columns.Where(column => column.Name.Length > 1).Select(column => $$""" "{{column.Name}}": { "column": "{{column.Name}}" } """).ToList();
        var sto = Stops.Contains("\"STO\"", StringComparison.Ordinal) ? "" : """ "STO": {} """;
        var acknowledge = columns.Any(column => column.Name == "reset") ? """ "acknowledge": { "signal": "reset" }, """ : "";
        var plan = Bench.Plan($$"""
            "motion": "linear", "standstill": "1 mm/s", "channels": { {{string.Join(", ", channels)}} },
            "stops": { {{string.Join(", ", new[] { sto, Stops }.Where(text => text.Trim().Length > 0))}} },
            "monitors": [ {{(Monitor.Length == 0 ? "" : $$"""{ "name": "m", {{Monitor}} }""")}} ]
            """, $$""" "signals": { {{string.Join(", ", signals)}} }, {{acknowledge}} """);
        return Log(Replay.Run(plan, Bench.Milliseconds(columns)));
    }

    private static (string Name, double[] Values) Column(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        return (line[..colon].Trim(), [.. line[(colon + 1)..].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))]);
    }

    private static IReadOnlyList<string> Log(ReplayResult result) =>
        [.. result.Trips.Select(trip => (trip.Time, $"{trip.Monitor} {trip.Side}"))
            .Concat(result.States.Single().Changes.Select(change => (change.Time, $"{change.State}")))
            .Concat(result.Outputs.SelectMany(output => output.Edges.Select(edge => (edge.Time, $"{output.Monitor} {(edge.On ? "on" : "off")}"))))
            .OrderBy(entry => entry.Item1).Select(entry => string.Create(CultureInfo.InvariantCulture, $"{entry.Item1 * 1000:0.######} {entry.Item2}"))];

    /// <inheritdoc/>
    public override string ToString() => Name;
}
