using System.Globalization;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What counts of a replay when another implementation is held against it.</summary>
internal static class VectorOutcome
{
    public static IReadOnlyList<string> Of(ReplayResult result) =>
    [
        .. result.Trips.Select(trip => string.Create(CultureInfo.InvariantCulture,
            $"{trip.Axis}.{trip.Monitor} trips at {trip.Time:0.#########} s, {trip.Side}{(trip.Level is { } level ? $" level {level}" : "")}")),
        .. result.States.SelectMany(axis => axis.Changes.Select(change => string.Create(CultureInfo.InvariantCulture, $"{axis.Axis} is {change.State} at {change.Time:0.#########} s by {change.Cause}"))),
        .. result.Outputs.SelectMany(output => output.Edges.Select(edge => string.Create(CultureInfo.InvariantCulture,
            $"{output.Axis}.{output.Monitor} is {(edge.On ? "on" : "off")} at {edge.Time:0.#########} s"))),
    ];

    public static IEnumerable<string> Differences(IReadOnlyList<string> expected, IReadOnlyList<string> found) =>
        expected.Except(found, StringComparer.Ordinal).Select(line => "missing: " + line).Concat(found.Except(expected, StringComparer.Ordinal).Select(line => "not expected: " + line));
}
