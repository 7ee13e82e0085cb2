using System.Globalization;

namespace MonitorSim.Explain;

/// <summary>Says a result in sentences that can be read aloud: what was asked, when watching began, what was seen, why that is a trip, what would have
/// avoided it, and what the axis then did.</summary>
public static class Explanation
{
    private const int MostTrips = 20;

    /// <summary>The sentences, one a line; an empty line between stories.</summary>
    public static IReadOnlyList<string> Lines(ReplayResult result)
    {
        var units = new UserUnits(result.Plan);
        var lines = new List<string> { Head(result) };
        foreach (var trip in result.Trips.Take(MostTrips)) lines.AddRange(["", .. Story(trip, result, units)]);
        if (result.Trips.Count > MostTrips) lines.AddRange(["", $"And {result.Trips.Count - MostTrips} more trips, which the JSON result lists."]);
        lines.Add("");
        lines.AddRange(result.Headroom.Select(room => Room(room, result, units)));
        lines.AddRange(result.Warnings.Select(warning => $"Note: {warning}."));
        lines.AddRange(["", "MonitorSim is an offline aid. It is no safety component and certifies nothing; risk assessment, validation and tests on the real machine remain."]);
        return lines;
    }

    private static string Head(ReplayResult result) =>
        $"{(result.Plan.Title.Length == 0 ? "The plan" : result.Plan.Title)}, on {result.Trace} ({Number(result.Duration)} s): "
        + (result.IsTripped ? $"{Count(result.Trips.Count, "trip")}." : "nothing tripped.");

    private static IEnumerable<string> Story(Trip trip, ReplayResult result, UserUnits units)
    {
        var name = $"{trip.Axis}, {trip.Monitor}{(trip.Function == trip.Monitor ? "" : $" ({trip.Function})")}";
        yield return $"At {Seconds(trip.Time)} {name} trips, side {trip.Side}, and {Phrases.Reaction(trip.Reaction)}.";
        yield return $"  It was asked for at {Seconds(trip.RequestedAt)}"
            + (trip.WatchingAt is { } watching ? $" and has watched since {Seconds(watching)}." : " and was still arming.");
        if (trip.Side == "invalid input")
        {
            yield return "  A value that it needs is missing there, or time has a gap before it: it cannot know, so it trips at once.";
        }
        else
        {
            string Text(double? value) => units.Text(trip.Axis, trip.Monitor, trip.Side, value, trip.Unit);
            var (past, worst) = trip.Side is "lower" || (trip.Side == "deceleration" && trip.Function is "SS1" or "SS2") ? ("below", "least") : ("above", "most");
            var lasted = trip.Time - trip.ExceededAt;
            yield return $"  Seen was {Phrases.Measured(trip.Function, trip.Side)} of {Text(trip.Value)}: {past} the limit of {Text(trip.Limit)}"
                + $"{(trip.Level is { } level ? $" (level {level})" : "")} since {Seconds(trip.ExceededAt)}"
                + (lasted == 0 ? ", and no filter forgives a single cycle." : $", for {Seconds(lasted)} without a break, {worst} {Text(trip.Peak)}; that is as long as its filter allows.");
            yield return $"  Avoided by {Avoided(trip, Text)}.";
        }

        yield return "  " + Then(trip, result);
    }

    private static string Avoided(Trip trip, Func<double?, string> text)
    {
        var ways = new List<string>();
        if (trip.AvoidedBy.Limit is { } limit) ways.Add($"a limit of {text(limit)}");
        if (trip.AvoidedBy.FilterAbove is { } filter) ways.Add($"a filter above {Seconds(filter)}");
        if (trip.AvoidedBy.DelayAbove is { } delay) ways.Add($"a delay above {Seconds(delay)}");
        var listed = ways.Count == 0 ? "no change of its own numbers" : string.Join(", or ", ways);
        return listed + (trip.AvoidedBy.Exact ? ", all else unchanged" : ", given that it was asked for as it was");
    }

    private static string Then(Trip trip, ReplayResult result)
    {
        var changes = result.States.Single(axis => axis.Axis == trip.Axis).Changes;
        var following = changes.Where(change => change.Time >= trip.Time).Take(3).ToList();
        var before = changes.LastOrDefault(change => change.Time < trip.Time)?.State ?? AxisState.Running;
        if (following.Count == 0) return $"{trip.Axis} changes nothing: it {Phrases.State(before)}.".Replace("it runs again", "it goes on running", StringComparison.Ordinal);
        return string.Join(" ", following.Select(change => $"At {Seconds(change.Time)} {trip.Axis} {Phrases.State(change.State)}, by {change.Cause}."));
    }

    private static string Room(Headroom room, ReplayResult result, UserUnits units)
    {
        var name = $"{room.Axis}, {room.Monitor}, {room.Side}{(room.Level is { } level ? $", level {level}" : "")}";
        var seen = result.Coverage.Single(c => c.Axis == room.Axis && c.Monitor == room.Monitor);
        if (seen.Requests == 0) return $"{name}: never asked for. This recording proves nothing about it.";
        if (room.Critical is null) return $"{name}: asked for {Count(seen.Requests, "time")}, but never compared for as long as its filter. This recording proves nothing about it.";
        string Text(double? value) => units.Text(room.Axis, room.Monitor, room.Side, value, room.Unit);
        var percent = room.Percent is { } share ? $" ({share.ToString("0.#", CultureInfo.InvariantCulture)} % of the limit)" : "";
        return $"{name}: watched for {Seconds(seen.Watched)}; needs {Text(room.Critical)} where the limit is {Text(room.Limit)}: "
            + (room.Room < 0 ? $"short by {Difference(-room.Room!.Value, room, units)}" : $"room of {Difference(room.Room!.Value, room, units)}") + percent + ".";
    }

    private static string Difference(double value, Headroom room, UserUnits units) =>
        units.Limit(room.Axis, room.Monitor, room.Side)?.Unit.FormatDifference(value) ?? units.Text(room.Axis, room.Monitor, room.Side, value, room.Unit);

    private static string Seconds(decimal time) => Number(time) + " s";

    private static string Number(decimal value) => value.ToString("0.#########", CultureInfo.InvariantCulture);

    private static string Count(int number, string noun) => $"{number.ToString(CultureInfo.InvariantCulture)} {noun}{(number == 1 ? "" : "s")}";
}
