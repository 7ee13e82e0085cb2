using System.Globalization;
using System.Text;
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

    /// <summary>Where replay and meaning disagree.</summary>
    public static IEnumerable<string> Disagreements(Bench bench, Draft draft, ReplayResult result)
    {
        foreach (var (axis, monitor) in draft.Meant)
        {
            var meant = draft.Trips.Where(trip => trip.Axis == axis && trip.Monitor == monitor).Select(trip => Text(bench, trip.Cycle, trip.Side)).ToList();
            var found = result.Trips.Where(trip => trip.Axis == axis && trip.Monitor == monitor).Select(trip => Text(trip.Time, trip.Side)).ToList();
            if (!meant.SequenceEqual(found)) yield return $"{axis}.{monitor} was to trip {Listed(meant)}, and tripped {Listed(found)}";
        }

        foreach (var (axis, cycle, state) in draft.States)
        {
            var found = result.States.First(timeline => timeline.Axis == axis).Changes.LastOrDefault(change => change.Time <= Seconds(bench, cycle))?.State ?? AxisState.Running;
            if (found != state) yield return $"{axis} was to be {state} at {Text(Seconds(bench, cycle), "")}, and was {found}";
        }

        foreach (var (axis, monitor, cycle, on) in draft.Outputs)
        {
            var found = result.Outputs.First(output => output.Axis == axis && output.Monitor == monitor).Edges.LastOrDefault(edge => edge.Time <= Seconds(bench, cycle))?.On ?? false;
            if (found != on) yield return $"{axis}.{monitor} was to be {(on ? "on" : "off")} at {Text(Seconds(bench, cycle), "")}, and was not";
        }
    }

    /// <summary>What came between: a side of the same monitor that is not meant, or, where the vector allows for it, any other monitor; null where nothing did.</summary>
    public static string? Disturbance(Bench bench, Draft draft, ReplayResult result)
    {
        foreach (var trip in result.Trips)
        {
            if (draft.CalledBy == (trip.Axis, trip.Monitor)) continue;
            var isOwn = draft.Meant.Contains((trip.Axis, trip.Monitor));
            if (draft.Trips.Any(meant => meant.Axis == trip.Axis && meant.Monitor == trip.Monitor && meant.Side == trip.Side)) continue;
            if (isOwn ? draft.Side is { } side && side != trip.Side : draft.MayBeDisturbed)
                return $"{trip.Axis}.{trip.Monitor} trips first ({trip.Side}, at {Text(trip.Time, "")} of the vector that was to meet it)";
        }

        return null;
    }

    private static decimal Seconds(Bench bench, int cycle) => bench.Clock.Cycle(cycle) / 1_000_000_000m;

    private static string Text(Bench bench, int cycle, string side) => Text(Seconds(bench, cycle), side);

    private static string Text(decimal seconds, string side) => string.Create(CultureInfo.InvariantCulture, $"{side} {seconds:0.#########} s").TrimStart();

    private static string Listed(IReadOnlyList<string> texts) => texts.Count == 0 ? "never" : "at " + string.Join(", ", texts);
}
