using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>How each state of an axis can be called for: by a request of its own stop, by a trip, or from its group.</summary>
internal sealed class Demands(Bench bench)
{
    /// <summary>All ways that can be gone, the best first: signals before trips, the own axis before its group, the others of the group standing before moving on.
    /// Where there is none, one that says so.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="stop">STO, SS1, SS2 or SOS.</param>
    /// <param name="kept">The recorded quantity that is better left alone; null: none.</param>
    public IReadOnlyList<Calling> Ways(string axis, string stop, Kind? kept = null)
    {
        var members = bench.GroupOf(axis).OrderBy(member => member == axis ? 0 : 1).ThenBy(member => member, StringComparer.Ordinal).ToList();
        var requests = members.Select(member => ByRequest(member, stop)).OfType<SignalCalling>().Where(way => way.Unreachable is not null || !IsOverruled(axis, stop, way.Yes));
        var trips = new[] { false, true }.SelectMany(negative => members.SelectMany(member => ByTrip(member, stop, negative))).Select(trip => new TripCalling(trip.Subject, trip.Lever)).ToList();
        var direct = requests.Concat<Calling>(trips).Where(way => way.Unreachable is null).OrderBy(way => kept is not null && way.Moves(axis) == kept ? 1 : 0)
            .SelectMany(way => members.Count == 1 ? [way] : new[] { new StandingCalling(bench, axis, way), way });
        var after = stop != "SOS" || bench.Plan.Axes[axis].Stops.Ss2 is not { } ss2 ? [] : Ways(axis, "SS2", kept).Where(way => way.Unreachable is null).Select(way => new AfterStopCalling(bench, axis, way, ss2));
        List<Calling> ways = [.. direct, .. after];
        return ways.Count > 0 ? ways : [new NoCalling(requests.Concat<Calling>(trips).FirstOrDefault()?.Unreachable
            ?? (members.Exists(member => IsAskedFor(member, stop)) ? $"every setting of the signals that asks for {stop} asks for a severer stop as well" : $"nothing in the plan calls for {stop}"))];
    }

    /// <summary>The ways to a stop by deceleration: by monitors of the axis's own speed while it slows down, after the ways that leave its speed alone.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="stop">SS1 or SS2.</param>
    /// <param name="plan">The stop.</param>
    /// <param name="cycles">How many cycles the axis has to go on slowing down.</param>
    /// <param name="negative">Whether it moves backwards.</param>
    public IReadOnlyList<Calling> SlowingWays(string axis, string stop, RampStopPlan plan, int cycles, bool negative)
    {
        var moved = bench.RootOf(axis, Kind.Acceleration);
        var ways = Ways(axis, stop, moved);
        var slowing = new[] { negative, !negative }.SelectMany(sign => ByTrip(axis, stop, sign)).Where(trip => trip.Lever is ChannelLever { Kind: Kind.Velocity } && trip.Lever.Moves == moved)
            .Select(trip => new SlowingCalling(bench, trip.Subject, (ChannelLever)trip.Lever, plan.Deceleration!.Exact, cycles, negative)).Where(way => way.Unreachable is null);
        return [.. ways.Where(way => way.Moves(axis) != moved), .. slowing, .. ways.Where(way => way.Moves(axis) == moved)];
    }

    /// <summary>The way by a request of the axis's own stop.</summary>
    public SignalCalling? ByRequest(string axis, string stop)
    {
        var stops = bench.Plan.Axes[axis].Stops;
        var request = stop switch { "STO" => stops.Sto?.Request, "SS1" => stops.Ss1?.Request, "SS2" => stops.Ss2?.Request, _ => stops.Sos?.Request };

        // Only what holds or goes to hold ends with its request.
        if (request is null) return null;
        var asking = bench.Requests.Of(request);
        return new SignalCalling(asking, canBeLost: stop == "SOS");
    }

    /// <summary>Whether signals ask an axis, or one of its group, for a severer stop as well: then that comes first.</summary>
    private bool IsOverruled(string axis, string stop, Setting? setting) => setting is not null && bench.GroupOf(axis).Select(member => bench.Plan.Axes[member].Stops)
        .SelectMany(stops => new[] { ("STO", stops.Sto?.Request), ("SS1", stops.Ss1?.Request), ("SS2", stops.Ss2?.Request) }.TakeWhile(one => one.Item1 != stop))
        .Any(one => one.Item2 is { } request && bench.Board.Holds(setting, request.Root) == true);

    private bool IsAskedFor(string axis, string stop) => ByRequest(axis, stop) is not null || (stop != "SOS" && bench.Chains(axis).Any(chain => chain.Subject.Reaction == ReactionOf(stop)));

    private static Reaction ReactionOf(string stop) => stop switch { "STO" => Reaction.Stop0, "SS1" => Reaction.Stop1, "SS2" => Reaction.Stop2, _ => Reaction.None };

    private IEnumerable<(Subject Subject, Lever Lever)> ByTrip(string member, string stop, bool negative)
    {
        var reaction = ReactionOf(stop);
        if (reaction == Reaction.None) yield break;
        foreach (var chain in bench.Chains(member, negative))
            if (chain.Subject.Reaction == reaction && chain.Subject.Calling is SignalCalling calling && (calling.Unreachable is not null || !IsOverruled(member, stop, calling.Yes))) yield return chain;
    }
}
