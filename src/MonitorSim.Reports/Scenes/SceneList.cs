using MonitorSim.Explain;
using MonitorSim.Replays;

namespace MonitorSim.Reports.Scenes;

/// <summary>Chooses what can be driven: the surroundings of each trip, and of the closest call of each limit that did not trip. A report stays of a size to
/// be mailed, however long the recording.</summary>
internal static class SceneList
{
    /// <summary>How many trips are told with a picture.</summary>
    public const int MostTrips = 20;
    /// <summary>How many limits that did not trip are shown.</summary>
    public const int MostCalls = 20;
    /// <summary>How many cycles a scene has at most.</summary>
    public const int MostCycles = 1200;

    private const int CyclesBefore = 60;

    /// <summary>The scenes of a replay.</summary>
    /// <param name="replay">The recording and its result.</param>
    /// <param name="prefix">What the ids begin with.</param>
    /// <returns>One entry a told trip (null where nothing is compared: invalid input), and the closest calls.</returns>
    public static (IReadOnlyList<Scene?> Trips, IReadOnlyList<Scene> Calls) Of(ReplayedTrace replay, string prefix)
    {
        var result = replay.Result;
        var trips = result.Trips.Take(MostTrips).ToList();
        var tripped = result.Trips.Select(trip => (trip.Axis, trip.Monitor, trip.Side, trip.Level)).ToHashSet();
        var calls = result.Headroom.Where(room => room.Time is not null && !tripped.Contains((room.Axis, room.Monitor, room.Side, room.Level))).Take(MostCalls).ToList();
        var step = Step(result);
        var asked = trips.Where(trip => trip.Limit is not null).Select(trip => Around(trip, step))
            .Concat(calls.Select(room => new ChainWindow(room.Axis, room.Monitor, room.Side, room.Time!.Value - 200 * step, room.Time.Value + 100 * step))).ToList();
        var histories = new Queue<ChainHistory>(ChainHistory.Of(result.Plan, replay.Trace, asked, replay.Faults));
        var told = trips.Select((trip, k) => trip.Limit is null ? null : OfTrip(trip, histories.Dequeue(), Id(prefix, "trip", k))).ToList();
        return (told, [.. calls.Select((room, k) => OfCall(room, histories.Dequeue(), Id(prefix, "call", k)))]);
    }

    /// <summary>From well before the exceedance (and before the request, where that is near) to some time after the trip.</summary>
    private static ChainWindow Around(Trip trip, decimal step)
    {
        var before = Math.Max(CyclesBefore * step, 3 * (trip.Time - trip.ExceededAt));
        var from = trip.ExceededAt - before;
        if (trip.RequestedAt < from && trip.Time - trip.RequestedAt <= MostCycles / 2 * step) from = trip.RequestedAt - CyclesBefore / 3 * step;
        return new(trip.Axis, trip.Monitor, trip.Side, from, trip.Time + (trip.Time - from) * 0.4m);
    }

    private static Scene OfTrip(Trip trip, ChainHistory history, string id)
    {
        var whole = history.Cycles.Count;
        history = Cut(history, trip.Time);
        var note = history.Cycles.Count == whole ? "" : $"The picture shows {MostCycles} of {whole} cycles; the exceedance began at {Say.Seconds(trip.ExceededAt)}.";
        return new(id, $"{trip.Axis}, {trip.Monitor}, {trip.Side}: trip at {Say.Seconds(trip.Time)}", history, IndexOf(history, trip.Time), true, note);
    }

    private static Scene OfCall(Headroom room, ChainHistory history, string id)
    {
        history = Cut(history, room.Time!.Value);
        return new(id, $"{room.Axis}, {room.Monitor}, {room.Side}: closest to its limit at {Say.Seconds(room.Time.Value)}", history, IndexOf(history, room.Time.Value), false, "");
    }

    /// <summary>At most <see cref="MostCycles"/>, mostly those before the cycle that matters.</summary>
    private static ChainHistory Cut(ChainHistory history, decimal time)
    {
        if (history.Cycles.Count <= MostCycles) return history;
        var first = Math.Clamp(IndexOf(history, time) - MostCycles * 3 / 4, 0, history.Cycles.Count - MostCycles);
        return history with { Cycles = [.. history.Cycles.Skip(first).Take(MostCycles)] };
    }

    private static int IndexOf(ChainHistory history, decimal time) => history.Cycles.TakeWhile(cycle => cycle.Time < time).Count();

    private static decimal Step(ReplayResult result) => result.Plan.Cycle is { } cycle ? cycle.Nanoseconds / 1e9m
        : result.Samples < 2 ? 0.001m : result.Duration / (result.Samples - 1);

    private static string Id(string prefix, string kind, int k) => FormattableString.Invariant($"{prefix}-{kind}-{k + 1}");
}
