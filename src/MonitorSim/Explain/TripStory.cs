using System.Globalization;

namespace MonitorSim.Explain;

/// <summary>One trip: what was asked, what was seen, why that is a trip, what would have avoided it.</summary>
internal static class TripStory
{
    public static IEnumerable<string> Of(Trip trip, ReplayResult result, UserUnits units)
    {
        var facts = new MonitorFacts(result.Plan, trip.Axis, trip.Monitor);
        yield return $"At {Say.Seconds(trip.Time)} {facts.Spoken} trips, side {trip.Side}, and {Phrases.Reaction(trip.Reaction)}.";
        yield return "  " + Asked(trip, result, facts) + LevelAsked(trip, result, facts);
        if (trip.Side == "invalid input")
        {
            yield return "  A value that it needs is missing there, or time has a gap just before: it cannot know whether its limit holds, so it trips at once.";
            yield return "  Avoided by a recording without the hole, or by \"missing\": \"hold\", which trusts the last value; no limit or filter of its own would.";
            yield break;
        }

        yield return "  " + Seen(trip, facts, units);
        yield return "  " + Why(trip, facts);
        yield return "  " + Avoided(trip, facts, units);
    }

    private static string Asked(Trip trip, ReplayResult result, MonitorFacts facts)
    {
        var at = Say.Seconds(trip.RequestedAt);
        if (facts.IsTwoChannels) return $"The two recordings are always compared, here from {at} on.";
        if (facts.IsStop) return $"{Began(trip.Monitor)} at {at}, and its check {(trip.WatchingAt is { } from ? $"has watched since {(from == trip.RequestedAt ? "then" : Say.Seconds(from))}" : "was still waiting for its delay")}.";
        var isAnew = result.Events.Any(e => e.Axis == trip.Axis && e.Time == trip.RequestedAt && e.Event == "acknowledged");
        var asked = (isAnew, facts.RequestText) switch
        {
            (true, null) => $"The acknowledgement at {at} started it anew",
            (true, { } request) => $"The acknowledgement at {at} started it anew, for its request, {request}, was still there",
            (_, null) => "It is always requested",
            (_, { } request) => $"Its request, {request}, came at {at}",
        };
        return facts.Delay is { Nanoseconds: > 0 } delay
            ? trip.WatchingAt is { } armed ? $"{asked}; after its delay of {delay} it has watched since {Say.Seconds(armed)}." : $"{asked}; its delay of {delay} had not passed yet: it was still arming."
            : $"{asked}, and it has watched since {(trip.WatchingAt is { } watching && (watching != trip.RequestedAt || facts.RequestText is null) ? Say.Seconds(watching) : "then")}.";
    }

    /// <summary>Which of several limits was asked for last, and when: the approach runs down to it, and the one in force may be another.</summary>
    private static string LevelAsked(Trip trip, ReplayResult result, MonitorFacts facts)
    {
        const string Word = "level ";
        var last = result.Events.LastOrDefault(e => e.Axis == trip.Axis && e.Source == trip.Monitor && e.Time <= trip.Time && e.Event.StartsWith(Word, StringComparison.Ordinal));
        if (facts.Levels is not { Count: > 1 } levels || last is null) return "";
        var level = int.Parse(last.Event[Word.Length..], CultureInfo.InvariantCulture);
        return $" Its limit of {levels[level].Limit}{Say.Level(level, facts)} was asked for at {Say.Seconds(last.Time)}.";
    }

    private static string Began(string stop) => stop switch
    {
        "STO" => "The torque went off",
        "SBC" => "The brake was commanded",
        "SOS" => "Holding began",
        _ => "The stop began",
    };

    private static string Seen(Trip trip, MonitorFacts facts, UserUnits units)
    {
        var isLower = Phrases.IsLower(trip.Function, trip.Side);
        var (value, limit) = units.Apart(trip.Axis, trip.Monitor, trip.Side, trip.Level, trip.Value, trip.Limit, trip.Unit);
        var lasted = trip.Time - trip.ExceededAt;
        var peak = units.Text(trip.Axis, trip.Monitor, trip.Side, trip.Level, trip.Peak, trip.Unit);
        var extreme = trip.Peak == trip.Value ? "" : $", {(isLower ? "falling to" : "reaching")} {peak}";
        return $"{Say.Sentence(Phrases.Measured(facts, trip.Side, trip.Unit))} was {value}, {(isLower ? "below" : "above")} the {Phrases.Limit(trip.Function, trip.Side)} of {limit}"
            + $"{Say.Level(trip.Level, facts)} since {Say.Seconds(trip.ExceededAt)}"
            + (lasted == 0 ? "." : $", for {Say.Duration(lasted, facts.Filter(trip.Side))} without a break{extreme}.");
    }

    private static string Why(Trip trip, MonitorFacts facts)
    {
        var limit = Phrases.Limit(trip.Function, trip.Side);
        var strictly = Phrases.IsLower(trip.Function, trip.Side) ? "less" : "more";
        var allowed = $"exactly the {limit} is allowed";
        return facts.FilterName(trip.Side) is { } name && facts.Filter(trip.Side) is { } filter && filter.Nanoseconds > 0
            ? $"Strictly {strictly} than the {limit} for at least the {name} of {filter} is a trip; {allowed}."
            : $"There is no filter: the first cycle with strictly {strictly} than the {limit} is a trip; {allowed}.";
    }

    private static string Avoided(Trip trip, MonitorFacts facts, UserUnits units)
    {
        var ways = new List<string>();
        if (trip.AvoidedBy.Limit is { } limit)
            ways.Add($"{Say.A(Phrases.Limit(trip.Function, trip.Side))} of {units.Enough(trip.Axis, trip.Monitor, trip.Side, trip.Level, limit, trip.Unit, Phrases.IsLower(trip.Function, trip.Side))}");
        if (trip.AvoidedBy.FilterAbove is { } filter && facts.FilterName(trip.Side) is { } filterName) ways.Add($"{Say.A(filterName)} above {Say.Duration(filter, facts.Filter(trip.Side))}");
        if (trip.AvoidedBy.DelayAbove is { } delay && facts.DelayName is { } delayName) ways.Add($"{Say.A(delayName)} above {Say.Duration(delay, facts.Delay ?? facts.Filter(trip.Side))}");
        var listed = ways.Count == 0 ? "no change of its own numbers" : string.Join(", or ", ways);
        var noDelay = trip.AvoidedBy.DelayAbove is null && facts.DelayName == "delay" && trip.Side != "timeLimit" ? " No delay within the request would." : "";
        return $"Avoided by {listed}, all else unchanged.{noDelay}{NotExact(trip, facts)}";
    }

    private static string NotExact(Trip trip, MonitorFacts facts) => trip.AvoidedBy.Exact ? ""
        : facts.IsStop ? " This is not exact: it holds given that the stop began as it did."
        : " This is not exact: the request depends on an output or a state, and it holds given the request as it was.";
}
