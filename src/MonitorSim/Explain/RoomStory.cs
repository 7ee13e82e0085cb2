using MonitorSim.Monitors;

namespace MonitorSim.Explain;

/// <summary>What did not trip: how much room there was, or why the recording proves nothing about it.</summary>
internal static class RoomStory
{
    public static IEnumerable<string> Of(Coverage coverage, ReplayResult result, UserUnits units)
    {
        var facts = new MonitorFacts(result.Plan, coverage.Axis, coverage.Monitor);
        if (Unchallenged(coverage, facts, result) is { } nothing) return [$"{facts.Spoken}: {nothing} This recording proves nothing about it."];
        var tripped = result.Trips.Where(trip => trip.Axis == coverage.Axis && trip.Monitor == coverage.Monitor).Select(trip => (trip.Side, trip.Level)).ToHashSet();
        var sides = result.Headroom.Where(room => room.Axis == coverage.Axis && room.Monitor == coverage.Monitor).ToList();
        var lines = sides.Where(room => !tripped.Contains((room.Side, room.Level))).Select(room => Side(room, coverage, facts, result, units));
        var output = result.Outputs.FirstOrDefault(o => o.Axis == coverage.Axis && o.Monitor == coverage.Monitor && facts.Monitor is not null);
        return output is null ? lines : lines.Append($"{facts.Spoken}: {OutputStory.Of(output)}");
    }

    /// <summary>Why nothing was compared at all; null where something was.</summary>
    private static string? Unchallenged(Coverage coverage, MonitorFacts facts, ReplayResult result)
    {
        if (coverage.Trips > 0) return null;
        if (coverage.Requests == 0) return facts.IsStop ? "the stop never began." : "never requested.";

        // The approach is compared while arming, so that a monitor that never watched may have been challenged none the less.
        if (result.Headroom.Any(room => room.Axis == coverage.Axis && room.Monitor == coverage.Monitor && room.Critical is not null)) return null;
        var stretches = result.Watching.FirstOrDefault(w => w.Axis == coverage.Axis && w.Monitor == coverage.Monitor)?.Stretches ?? [];
        var requested = facts.IsStop ? $"began {Say.Count(coverage.Requests, "time")}" : $"requested {Say.Count(coverage.Requests, "time")}";
        if (stretches.All(stretch => stretch.WatchingAt is null)) return $"{requested}, but never watching: {Blind(stretches, facts)}";
        return result.Headroom.Any(room => room.Axis == coverage.Axis && room.Monitor == coverage.Monitor)
            ? $"{Watched(coverage)}, but {Never(facts, "")}."
            : null;
    }

    private static string Blind(IReadOnlyList<WatchStretch> stretches, MonitorFacts facts)
    {
        if (facts.Delay is not { } delay) return "each time it, or the recording, ended before it could watch.";
        var longest = stretches.Count == 0 ? "" : $" ({Say.Duration(stretches.Max(stretch => stretch.Until - stretch.RequestedAt), delay)} at most)";
        return $"each time it, or the recording, ended before its {facts.DelayName ?? "delay"} of {delay} had passed{longest}. Until then nothing is compared.";
    }

    private static string Side(Headroom room, Coverage coverage, MonitorFacts facts, ReplayResult result, UserUnits units)
    {
        var name = $"{facts.Spoken}, {room.Side}{Say.Level(room.Level, facts)}";
        if (room.Critical is not { } critical) return $"{name}: {Never(facts, room.Side)}. This recording proves nothing about it.";
        var limit = units.Text(room.Axis, room.Monitor, room.Side, room.Level, room.Limit, room.Unit);
        var needs = units.Enough(room.Axis, room.Monitor, room.Side, room.Level, critical, room.Unit, Phrases.IsLower(facts.Function, room.Side));
        var head = $"{name}: {Watched(coverage)}; needs {needs} where the {Phrases.Limit(facts.Function, room.Side)} is {limit}: ";
        var percent = room.Percent is { } share ? $" ({Say.Percent(Math.Abs(share))} of it)" : "";
        var size = units.Difference(room.Axis, room.Monitor, room.Side, room.Level, Math.Abs(room.Room ?? 0), room.Unit);
        if (room.Room == 0) return $"{head}exactly at it, which is allowed, without room.{Filtered(room, facts, result)}";
        if (room.Room > 0) return $"{head}room of {size}{percent}.{Filtered(room, facts, result)}";
        return $"{head}short by {size}{percent}, but "
            + (facts.Monitor is Smt && coverage.Trips == 0 ? "it has no reaction and only switches its output." : "it was already tripped then, or starting anew after an acknowledgement.");
    }

    /// <summary>What lay beyond the limit for less than the filter. Excursions know no levels, so with levels nothing is said.</summary>
    private static string Filtered(Headroom room, MonitorFacts facts, ReplayResult result)
    {
        var excursions = result.Excursions.Where(e => e.Axis == room.Axis && e.Monitor == room.Monitor && e.Side == room.Side && !e.Trips).ToList();
        if (excursions.Count == 0 || room.Level is not null || facts.Filter(room.Side) is not { } filter) return "";
        var longest = excursions.MaxBy(e => e.Duration)!;
        var lasted = longest.Duration == 0 ? "for a single cycle" : "for " + Say.Duration(longest.Duration, filter);
        return $" It was {(Phrases.IsLower(facts.Function, room.Side) ? "below" : "above")} it {(excursions.Count == 1 ? "once" : $"{excursions.Count} times, at longest")} {lasted}, "
            + $"at {Say.Seconds(longest.From)}, which its filter of {filter} lets pass.";
    }

    private static string Watched(Coverage coverage) => coverage.Watched == 0 ? "watched for single cycles only" : $"watched for {Say.Seconds(coverage.Watched)}";

    private static string Never(MonitorFacts facts, string side) =>
        facts.Filter(side) is { Nanoseconds: > 0 } filter ? $"never compared for as long as its filter of {filter}" : "there was never a value to compare";
}
