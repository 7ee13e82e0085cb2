using System.Globalization;
using System.Text;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Replays a vector and holds the outcome against what was meant. What was meant follows from how the vector was made, not from the replay.</summary>
internal static class Confirmation
{
    /// <summary>Replays the CSV text as any reader of the file would.</summary>
    public static ReplayResult Replayed(Plan plan, string csv, string name)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(csv));
        return Replay.Run(plan, TraceReader.Read(stream, name, PlannedTrace.DialectOf(plan.Trace), PlannedTrace.Columns(plan)));
    }

    /// <summary>Why a vector does not show what it should, and whether that is an error of the generator; null where it does.</summary>
    /// <remarks>It is none where another trip, which the plan gives no way to keep off, came before what was meant, or where what was to call for a stop
    /// did not.</remarks>
    public static (string Reason, bool IsError)? Objection(Bench bench, Draft draft, ReplayResult result)
    {
        var disagreements = Disagreements(bench, draft, result).OrderBy(one => one.Time).ToList();
        var begins = draft.Begins is not { } begin || result.States.First(states => states.Axis == begin.Axis).Changes.Any(change => change.Time == Seconds(bench, begin.Cycle));
        if (begins && disagreements.Count == 0) return null;
        var until = begins ? disagreements[0].Time : Seconds(bench, draft.Begins!.Value.Cycle);
        if (Disturbance(bench, draft, result, until) is { } disturbance) return (disturbance, false);
        if (!begins && draft.CalledBy is { } by) return ($"{by.Axis}.{by.Monitor} would have to call for it, and does not trip at this motion as it would have to", false);
        return (begins ? string.Join("; ", disagreements.Select(one => one.Text)) : $"the stop was to begin at {Text(until, "")}, and did not", true);
    }

    /// <summary>Where replay and meaning disagree, and since when.</summary>
    private static IEnumerable<(decimal Time, string Text)> Disagreements(Bench bench, Draft draft, ReplayResult result)
    {
        foreach (var (axis, monitor) in draft.Meant)
        {
            var meant = draft.Trips.Where(trip => trip.Axis == axis && trip.Monitor == monitor).Select(trip => (Time: Seconds(bench, trip.Cycle), trip.Side)).ToList();
            var found = result.Trips.Where(trip => trip.Axis == axis && trip.Monitor == monitor).Select(trip => (trip.Time, trip.Side)).ToList();
            if (!meant.SequenceEqual(found))
                yield return (meant.Except(found).Concat(found.Except(meant)).Min(trip => trip.Time), $"{axis}.{monitor} was to trip {Listed(meant)}, and tripped {Listed(found)}");
        }

        foreach (var (axis, cycle, state) in draft.States)
        {
            var found = result.States.First(timeline => timeline.Axis == axis).Changes.LastOrDefault(change => change.Time <= Seconds(bench, cycle))?.State ?? AxisState.Running;
            if (found != state) yield return (Seconds(bench, cycle), $"{axis} was to be {state} at {Text(Seconds(bench, cycle), "")}, and was {found}");
        }

        foreach (var (axis, monitor, cycle, on) in draft.Outputs)
        {
            var found = result.Outputs.First(output => output.Axis == axis && output.Monitor == monitor).Edges.LastOrDefault(edge => edge.Time <= Seconds(bench, cycle))?.On ?? false;
            if (found != on) yield return (Seconds(bench, cycle), $"{axis}.{monitor} was to be {(on ? "on" : "off")} at {Text(Seconds(bench, cycle), "")}, and was not");
        }
    }

    /// <summary>The first trip that came between: of another side of the same monitor, or of a monitor that stops the axis or its group; null where none did.</summary>
    private static string? Disturbance(Bench bench, Draft draft, ReplayResult result, decimal until)
    {
        var axes = draft.Meant.Select(one => one.Axis).Concat(draft.States.Select(one => one.Axis)).Concat(draft.Begins is { } begin ? [begin.Axis] : []).SelectMany(bench.GroupOf).ToHashSet(StringComparer.Ordinal);
        foreach (var trip in result.Trips.Where(trip => trip.Time <= until))
        {
            if (draft.CalledBy == (trip.Axis, trip.Monitor)) continue;
            if (draft.Trips.Any(meant => meant.Axis == trip.Axis && meant.Monitor == trip.Monitor && meant.Side == trip.Side)) continue;
            var isOtherSide = draft.Meant.Contains((trip.Axis, trip.Monitor)) && draft.Side is { } side && side != trip.Side;
            if (isOtherSide || (draft.IsOfStates && trip.Reaction != Reaction.None && axes.Contains(trip.Axis) && !draft.Meant.Contains((trip.Axis, trip.Monitor))))
                return $"{trip.Axis}.{trip.Monitor} trips first ({trip.Side}, at {Text(trip.Time, "")} of the vector that was to meet it)";
        }

        // A request that comes with the signals that were meant for another.
        var causes = result.States.Where(states => draft.IsOfStates && axes.Contains(states.Axis)).SelectMany(states => states.Changes).Where(change => change.Time <= until).SelectMany(change => change.Cause.Split(", ").Select(cause => (change.Time, Cause: cause)));
        foreach (var (time, cause) in causes)
        {
            if (!Requests(bench, axes).Contains(cause) || draft.Meant.Concat(draft.CalledBy is { } by ? [by] : []).Any(one => cause == $"{one.Axis}.{one.Monitor}")) continue;
            if (draft.Begins is { } begun && Severity(cause.Split('.')[^1]) <= Severity(draft.Meant.First(one => one.Axis == begun.Axis).Monitor)) continue;
            return $"{cause} is requested first (at {Text(time, "")} of the vector that was to meet it)";
        }

        return null;
    }

    private static IEnumerable<string> Requests(Bench bench, IEnumerable<string> axes) => axes.SelectMany(axis => new[] { "STO", "SS1", "SS2", "SOS" }.Select(stop => $"{axis}.{stop}"));

    private static int Severity(string stop) => stop switch { "SBC" or "STO" => 4, "SS1" => 3, "SS2" => 2, _ => 1 };

    private static decimal Seconds(Bench bench, int cycle) => bench.Clock.Cycle(cycle) / 1_000_000_000m;

    private static string Text(decimal seconds, string side) => string.Create(CultureInfo.InvariantCulture, $"{side} {seconds:0.#########} s").TrimStart();

    private static string Listed(IReadOnlyList<(decimal Time, string Side)> trips) => trips.Count == 0 ? "never" : "at " + string.Join(", ", trips.Select(trip => Text(trip.Time, trip.Side)));
}
