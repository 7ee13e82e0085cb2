using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>How each state of an axis can be called for: by a request of its own stop, by a trip, or from its group.</summary>
internal sealed class Demands(Bench bench)
{
    /// <summary>The first way that can be gone; signals before trips, the own axis before its group.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="stop">STO, SS1, SS2 or SOS.</param>
    /// <param name="kept">The recorded quantity that is better left alone; null: none.</param>
    public Calling? Of(string axis, string stop, Kind? kept = null)
    {
        var members = bench.GroupOf(axis).OrderBy(member => member == axis ? 0 : 1).ThenBy(member => member, StringComparer.Ordinal).ToList();
        List<Calling> ways = [.. members.Select(member => (Calling?)ByRequest(member, stop)).Concat(members.SelectMany(member => ByTrip(member, stop))).OfType<Calling>().Where(way => way.Unreachable is null)];
        return ways.Find(way => kept is null || way.Moves(axis) != kept) ?? ways.FirstOrDefault() ?? (stop == "SOS" ? AfterStop(axis, kept) : null);
    }

    /// <summary>The way by a request of the axis's own stop.</summary>
    public SignalCalling? ByRequest(string axis, string stop)
    {
        var stops = bench.Plan.Axes[axis].Stops;
        var request = stop switch { "STO" => stops.Sto?.Request, "SS1" => stops.Ss1?.Request, "SS2" => stops.Ss2?.Request, _ => stops.Sos?.Request };

        // Only what holds or goes to hold ends with its request.
        if (request is null) return null;
        var asking = bench.Requests.Of(request);
        return stop == "SOS" && IsOverruled(axis, asking) ? null : new SignalCalling(asking, canBeLost: stop == "SOS");
    }

    /// <summary>Whether the signals that ask an axis to hold ask it, or an axis of its group, to stop as well: then that comes first.</summary>
    private bool IsOverruled(string axis, Asking asking) => asking.Yes is { } yes && bench.GroupOf(axis).Select(member => bench.Plan.Axes[member].Stops)
        .SelectMany(stops => new[] { stops.Sto?.Request, stops.Ss1?.Request, stops.Ss2?.Request })
        .Any(request => request is not null && bench.Board.Holds(yes, request.Root) != false);

    private IEnumerable<Calling> ByTrip(string member, string stop)
    {
        var reaction = stop switch { "STO" => Reaction.Stop0, "SS1" => Reaction.Stop1, "SS2" => Reaction.Stop2, _ => Reaction.None };
        if (reaction == Reaction.None) yield break;
        foreach (var (subject, lever) in bench.Chains(member))
            if (subject.Reaction == reaction) yield return new TripCalling(subject, lever);
    }

    private AfterStopCalling? AfterStop(string axis, Kind? kept) =>
        Of(axis, "SS2", kept) is { } calling ? new(calling, StopEnd.Cycles(bench, bench.Plan.Axes[axis].Stops.Ss2!)) : null;
}

/// <summary>SOS as what comes after SS2: the stop runs its time, standing.</summary>
internal sealed class AfterStopCalling(Calling stop, int cycles) : Calling
{
    public override bool CanBeAbsent => true;

    public override bool CanBeLost => false;

    public override void Leave(Script script) => stop.Leave(script);

    public override void Call(Script script)
    {
        stop.Call(script);
        script.Run(cycles);
    }
}

/// <summary>When a stop ends.</summary>
internal static class StopEnd
{
    /// <summary>Cycles from the first one of a stop to the one at which it ends, where the axis stands from the beginning.</summary>
    public static int Cycles(Bench bench, RampStopPlan stop) => bench.Clock.Cycles(stop.Variant == StopVariant.Time ? stop.Time : stop.Settle);
}
