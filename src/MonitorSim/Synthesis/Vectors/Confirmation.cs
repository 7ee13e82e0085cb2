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
        if (Disturbance.Of(bench, draft, result, until) is { } disturbance) return (disturbance, false);
        if (draft.Script.Assumption is { } assumption) return (assumption, false);
        if (!begins && draft.CalledBy is { } by) return ($"{by.Axis}.{by.Monitor} would have to call for it, and does not trip at this motion as it would have to", false);
        return (begins ? string.Join("; ", disagreements.Select(one => one.Text)) : $"the stop was to begin at {Text(until)}, and did not", true);
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
            if (found != state) yield return (Seconds(bench, cycle), $"{axis} was to be {state} at {Text(Seconds(bench, cycle))}, and was {found}");
        }

        foreach (var (axis, monitor, cycle, on) in draft.Outputs)
        {
            var found = result.Outputs.First(output => output.Axis == axis && output.Monitor == monitor).Edges.LastOrDefault(edge => edge.Time <= Seconds(bench, cycle))?.On ?? false;
            if (found != on) yield return (Seconds(bench, cycle), $"{axis}.{monitor} was to be {(on ? "on" : "off")} at {Text(Seconds(bench, cycle))}, and was not");
        }
    }

    private static decimal Seconds(Bench bench, int cycle) => bench.Clock.Seconds(cycle);

    private static string Text(decimal seconds) => VectorClock.Text(seconds);

    private static string Listed(IReadOnlyList<(decimal Time, string Side)> trips) => trips.Count == 0 ? "never" : "at " + string.Join(", ", trips.Select(trip => $"{trip.Side} {Text(trip.Time)}".TrimStart()));
}
