using System.Globalization;
using MonitorSim.Explain;

namespace MonitorSim.Assertions;

/// <summary>What a replay has to say about a monitor or an axis, in lines for the message of a failed test.</summary>
internal static class ReplayFacts
{
    private const int Most = 10;

    /// <summary>Trips, room and coverage; all monitors of an axis where none is named, all axes where none is.</summary>
    public static IEnumerable<string> Of(ReplayResult result, string? axis, string? monitor)
    {
        bool Concerns(string a, string m) => (axis is null || a == axis) && (monitor is null || m == monitor);
        var lines = Listed(result.Trips.Where(trip => Concerns(trip.Axis, trip.Monitor)).Select(trip => Text(result, trip)), "No trip of it.");
        var others = result.Trips.Where(trip => !Concerns(trip.Axis, trip.Monitor)).Select(trip => "Elsewhere: " + Text(result, trip));
        var room = result.Headroom.Where(h => Concerns(h.Axis, h.Monitor)).Select(h => Text(result, h));
        var coverage = result.Coverage.Where(c => Concerns(c.Axis, c.Monitor)).Select(c => Text(result, c));
        return [.. lines, .. Listed(others), .. Listed(room, "Room: nothing was compared."), .. Listed(coverage), .. result.Warnings.Take(Most).Select(warning => "Warning: " + warning)];
    }

    /// <summary>The changes of an axis's state, and what tripped on it.</summary>
    public static IEnumerable<string> OfAxis(ReplayResult result, string axis)
    {
        var changes = result.States.Where(states => states.Axis == axis).SelectMany(states => states.Changes);
        return [.. Listed(changes.Select(change => $"State: {change.State} from {Time(change.Time)}, because of {change.Cause}"), "State: Running throughout."), .. Of(result, axis, null)];
    }

    /// <summary>Decimal seconds for people.</summary>
    public static string Time(decimal seconds) => seconds.ToString("0.#########", CultureInfo.InvariantCulture) + " s";

    /// <summary>A trip in one line.</summary>
    public static string Text(ReplayResult result, Trip trip)
    {
        var at = $"Trip: {trip.Axis}.{trip.Monitor} ({trip.Function}, {trip.Side}) at {Time(trip.Time)}";
        if (trip.Value is null) return at;
        var (value, limit) = new UserUnits(result.Plan).Apart(trip.Axis, trip.Monitor, trip.Side, trip.Level, trip.Value, trip.Limit, trip.Unit);
        return $"{at}: {value} against {limit}, exceeded since {Time(trip.ExceededAt)}, requested at {Time(trip.RequestedAt)}";
    }

    private static string Text(ReplayResult result, Headroom room)
    {
        var side = $"Room: {room.Axis}.{room.Monitor} ({room.Side}{(room.Level is { } level ? FormattableString.Invariant($", level {level}") : "")})";
        var units = new UserUnits(result.Plan);
        var limit = units.Text(room.Axis, room.Monitor, room.Side, room.Level, room.Limit, room.Unit);
        if (room is not { Room: { } left, Critical: { } critical }) return $"{side}: never compared long enough against {limit}";
        var percent = room.Percent is { } p ? FormattableString.Invariant($" ({p:0.##} %)") : "";
        return $"{side}: {units.Difference(room.Axis, room.Monitor, room.Side, room.Level, left, room.Unit)}{percent} between the critical limit {units.Text(room.Axis, room.Monitor, room.Side, room.Level, critical, room.Unit)}{(room.Time is { } t ? $" at {Time(t)}" : "")} and the limit {limit}";
    }

    private static string Text(ReplayResult result, Coverage coverage)
    {
        var watched = result.WasWatched(coverage.Axis, coverage.Monitor) ? $"watched for {Time(coverage.Watched)}" : "never watched";
        return FormattableString.Invariant($"Coverage: {coverage.Axis}.{coverage.Monitor} requested {coverage.Requests} ×, {watched}, tripped {coverage.Trips} ×");
    }

    /// <summary>Whether a monitor watched at any cycle.</summary>
    public static bool WasWatched(this ReplayResult result, string axis, string monitor) =>
        result.Watching.Any(w => w.Axis == axis && w.Monitor == monitor && w.Stretches.Any(stretch => stretch.WatchingAt is not null));

    private static IEnumerable<string> Listed(IEnumerable<string> lines, string? none = null)
    {
        var all = lines.ToList();
        if (all.Count == 0) return none is null ? [] : [none];
        return all.Count <= Most ? all : [.. all.Take(Most), FormattableString.Invariant($"… and {all.Count - Most} more")];
    }
}
