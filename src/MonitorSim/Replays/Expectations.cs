using System.Globalization;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>Holds a result against the plan's <c>expect</c> lines.</summary>
internal static class Expectations
{
    public static IReadOnlyList<Expectation> Of(Plan plan, ReplayResult result, Inputs inputs, Engine engine) =>
        [.. plan.Expect.Select((line, index) =>
        {
            var (holds, because) = line.State is { } state ? OfState(line, state, engine)
                : line.TripsWith is { } signal ? OfSignal(line, signal, result, inputs)
                : OfTrips(line, result);
            return new Expectation(index, holds, because);
        })];

    private static (bool, string) OfTrips(ExpectPlan line, ReplayResult result)
    {
        var trips = TripTimes(line, result);
        var (from, until) = line.Between is { } between ? (Seconds.Of(between[0].Nanoseconds), Seconds.Of(between[1].Nanoseconds)) : (decimal.MinValue, decimal.MaxValue);
        var inside = trips.Where(time => from <= time && time <= until).ToList();
        var found = inside.Count == 0 ? "no trip" : $"{Count(inside.Count, "trip")}, the first at {Text(inside[0])}";
        var where = line.Between is null ? "" : $" between {Text(from)} and {Text(until)}";
        return (inside.Count > 0 == line.Trips, $"{Name(line)}: {found}{where}");
    }

    private static (bool, string) OfState(ExpectPlan line, AxisState state, Engine engine)
    {
        // The state holds from the cycle at which it is logged; before the first change the axis is Running.
        var before = line.Before?.Nanoseconds ?? long.MaxValue;
        var reached = engine.Reactors[line.Axis].Changes.Where(change => change.State == state).Select(change => (long?)change.Time).FirstOrDefault();
        var first = engine.Done == 0 ? (long?)null : engine.Clock.TimeOf(0);
        if (state == AxisState.Running && first is { } start && !engine.Reactors[line.Axis].Changes.Any(change => change.Time == start)) reached = start;
        var limit = line.Before is null ? "" : $", asked for before {Text(Seconds.Of(before))}";
        return (reached < before, $"{line.Axis} {(reached is { } time ? $"is {state} at {Text(Seconds.Of(time))}" : $"is never {state}")}{limit}");
    }

    private static (bool, string) OfSignal(ExpectPlan line, string signal, ReplayResult result, Inputs inputs)
    {
        var trips = TripTimes(line, result);
        var edges = inputs.Signal(signal).Edges.Where((_, index) => index % 2 == 0).Select(sample => Seconds.Of(inputs.Times[sample])).ToList();
        var within = Seconds.Of(line.Within?.Nanoseconds ?? 0);
        var lonelyTrips = trips.Where(trip => !edges.Any(edge => Math.Abs(edge - trip) <= within)).ToList();
        var lonelyEdges = edges.Where(edge => !trips.Any(trip => Math.Abs(edge - trip) <= within)).ToList();
        var differences = lonelyTrips.Select(trip => $"a trip at {Text(trip)} without an edge").Concat(lonelyEdges.Select(edge => $"an edge at {Text(edge)} without a trip")).ToList();
        var listed = string.Join("; ", differences.Take(10)) + (differences.Count > 10 ? $"; and {differences.Count - 10} more" : "");
        return (differences.Count == 0, $"{Name(line)} with {signal}, within {Text(within)}: {(differences.Count == 0 ? $"{Count(trips.Count, "trip")} and {Count(edges.Count, "edge")} agree" : listed)}");
    }

    private static List<decimal> TripTimes(ExpectPlan line, ReplayResult result) =>
        [.. result.Trips.Where(trip => trip.Axis == line.Axis && (line.Monitor is "*" or null || trip.Monitor == line.Monitor)).Select(trip => trip.Time).Distinct()];

    private static string Name(ExpectPlan line) => $"{line.Axis}.{line.Monitor ?? "*"}";

    private static string Count(int number, string noun) => $"{number} {noun}{(number == 1 ? "" : "s")}";

    private static string Text(decimal seconds) => seconds.ToString("0.#########", CultureInfo.InvariantCulture) + " s";
}
