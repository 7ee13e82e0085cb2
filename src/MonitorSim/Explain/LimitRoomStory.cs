using MonitorSim.Quantities;
using MonitorSim.Tuning;

namespace MonitorSim.Explain;

/// <summary>The room of a tuned limit in sentences: what production needs, what the hazard allows and why, and what each lever would give.</summary>
public static class LimitRoomStory
{
    private static readonly Unit Milliseconds = Unit.Parse("ms");

    /// <summary>The lines of every limit that the hazard concerns.</summary>
    /// <param name="result">A result with rooms.</param>
    public static IEnumerable<string> Lines(TuneResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Monitors.Where(limit => limit.Room.Chain is not null).SelectMany(limit => Of(result, limit));
    }

    private static IEnumerable<string> Of(TuneResult result, TunedLimit limit)
    {
        var (text, room) = (new TunedText(limit), limit.Room);
        var (needs, allows) = (Needs(limit, text), Allows(room, text));
        yield return $"{TunedText.Name(limit)}, {limit.Side}: {needs}; {allows}. {Verdict(limit, text)}";
        yield return "  " + Chain(result, limit, text);
        foreach (var lever in room.Levers) yield return "  " + Say(lever, room, text);
    }

    private static string Needs(TunedLimit limit, TunedText text)
    {
        var room = limit.Room;
        if (room.From is null)
        {
            return room.Basis == NeedBasis.DistributionFree && limit.Critical is not null
                ? $"production's need is open, as a distribution-free bound takes {limit.Bounds.RunsNeeded} runs"
                : "production's need is open, as the recordings never challenged it";
        }

        var basis = room.Basis switch
        {
            NeedBasis.DistributionFree => "the distribution-free bound for the next run",
            NeedBasis.Normal => "the normal tolerance limit for the next run",
            _ => "what the recordings needed",
        };
        return $"production needs {text.Enough(room.From)} ({basis}{(room.Margin > 0 ? $" and a margin of {text.Difference(room.Margin)}" : "")})";
    }

    private static string Allows(Room room, TunedText text) => room switch
    {
        { DecidedBy: null } => "what the hazard allows was not said",
        { To: null } => $"the hazard allows no limit at all: its {room.DecidedBy} is passed even from standstill",
        _ => $"the hazard allows up to {text.AtMost(room.To)}, as its {room.DecidedBy} decides",
    };

    private static string Verdict(TunedLimit limit, TunedText text)
    {
        var room = limit.Room;
        if (room.DecidedBy is null) return "";
        var present = $"the present limit of {limit.Written}";
        var tooMuch = room.To is { } to && limit.Limit > to ? $" By {text.Difference(limit.Limit - to)} {present} is more than the hazard allows." : "";
        if (room.IsThere is not { } isThere) return tooMuch.Length > 0 ? tooMuch.TrimStart() : "";
        if (!isThere) return (room.Size is { } missing ? $"NO ROOM: {text.Difference(-missing)} are missing." : "NO ROOM.") + tooMuch;
        if (tooMuch.Length > 0) return $"There is room of {text.Difference(room.Size!.Value)}, but not where the limit is.{tooMuch}";
        return limit.Limit < room.From
            ? $"There is room of {text.Difference(room.Size!.Value)}, but {present} is {text.Difference(room.From.Value - limit.Limit)} less than production needs."
            : $"ROOM of {text.Difference(room.Size!.Value)}, and {present} lies within.";
    }

    private static string Chain(TuneResult result, TunedLimit limit, TunedText text)
    {
        var (chain, room) = (limit.Room.Chain!, limit.Room);
        var cycle = result.Plan.Cycle is null ? "longest step between samples" : "cycle";
        var rounded = Math.Abs(chain.FilterInCycles - chain.Filter) > 1e-9 ? " in whole cycles" : "";
        var line = $"From passing {limit.Written} to standstill: filter{rounded} {Time(chain.FilterInCycles)} + {cycle} {Time(chain.Cycle)} + input delay {Time(chain.InputDelay)} "
            + $"+ reaction delay {Time(chain.ReactionDelay)} + stopping{(chain.Stopping is PlantStopping ? " as its plant does" : "")} {Time(chain.StoppingTime)} = {Time(chain.TotalTime)}; "
            + $"{text.Value(chain.PeakSpeed)} when the drive acts{(chain.FaultAcceleration > 0 ? $" after a fault of {text.Acceleration.Format(chain.FaultAcceleration, 4)}" : "")}; overrun {text.Way(chain.Travel)}";
        if (chain.HighestSpeed > chain.PeakSpeed) line += $"; the load drives it on to {text.Value(chain.HighestSpeed)}";
        if (room.SeparationDistance is { } distance) line += $"; separation distance S = K·T + C = {Unit.Parse("mm").Format(distance, 5)}";
        if (room.Energy is { } energy) line += $"; kinetic energy {Unit.Parse("J").Format(energy, 4)}";
        return line + ".";
    }

    private static string Say(Lever lever, Room room, TunedText text)
    {
        var (name, isTime) = (Name(lever.Name), lever.Unit == "s");
        var head = $"{name} (now {Show(lever, lever.Present, false, text)})";
        if (room.IsThere == true)
        {
            if (lever.Enough is not { } most) return $"{head}: room is left whatever it is.";
            var farthest = Show(lever, most, isTime, text);

            // A longer filter lets production need less, in steps, and counts in whole cycles: room comes and goes.
            return lever.Name is "filter" or "cycle" ? $"{head}: the longest with room is {farthest}; not every shorter one need have room."
                : $"{head}: room is left {(isTime ? "up to" : "down to")} {farthest}.";
        }

        if (lever.Enough is { } enough) return $"{head}: {Show(lever, enough, isTime, text)} alone would make room.";
        var then = lever.From is null ? "nothing would trip" : $"production would need {text.Enough(lever.From)}";
        return $"{head}: makes no room alone; at {Show(lever, lever.Extreme, false, text)} {then} and the hazard allow {(lever.To is null ? "no limit" : text.AtMost(lever.To))}.";
    }

    private static string Name(string lever) => lever switch
    {
        "inputDelay" => "input delay",
        "reactionDelay" => "reaction delay",
        _ => lever,
    };

    private static string Time(double seconds) => Milliseconds.Format(seconds, 4);

    // Times are rounded down and decelerations up, so that what is read aloud still does.
    private static string Show(Lever lever, double value, bool down, TunedText text) => lever.Unit switch
    {
        "s" => down ? SafeRounding.Text(value, Milliseconds, isLower: true) : Milliseconds.Format(value),
        "1" => FormattableString.Invariant($"{value:G4} times as strong"),
        _ => value == lever.Present ? text.Acceleration.Format(value) : SafeRounding.Text(value, text.Acceleration, isLower: false),
    };
}
