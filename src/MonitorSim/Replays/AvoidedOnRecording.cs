using MonitorSim.Motion;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>What would have avoided a trip after which the motion became another one: asked of the recording, which is how the machine would have gone on.</summary>
/// <remarks>That holds for trips up to the moment at which their axis left its recording. Later ones are told of the motion as it was simulated, and not as exact:
/// with another limit it would have been another motion.</remarks>
internal sealed class AvoidedOnRecording(Plan plan, Inputs inputs, Motions motions, IReadOnlyDictionary<string, SimulatedAxis> left)
{
    private readonly Lazy<Dictionary<(string, string?, int), AvoidedBy>> _recorded = new(() => OnRecording(plan, inputs, motions));

    public Trip Of(TripNote note, Trip trip)
    {
        if (left.Count == 0) return trip;
        var isBefore = !left.TryGetValue(trip.Axis, out var axis) || note.Cycle.Time <= axis.LeftAt;
        return isBefore && _recorded.Value.TryGetValue(KeyOf(note), out var avoided)
            ? trip with { AvoidedBy = avoided } : trip with { AvoidedBy = trip.AvoidedBy with { Exact = false } };
    }

    private static (string, string?, int) KeyOf(TripNote note) => (note.Monitor.FullName, note.Side?.Name, note.Cycle.Index);

    private static Dictionary<(string, string?, int), AvoidedBy> OnRecording(Plan plan, Inputs inputs, Motions motions)
    {
        var engine = Replay.RunEngine(plan with { Motion = MotionSource.Recorded }, inputs, default, faults: motions.ChannelFaults);
        foreach (var run in engine.Runs) run.Finish(engine.Done);
        var evidence = new Evidence(engine.Clock, engine.Done);
        var all = new Dictionary<(string, string?, int), AvoidedBy>();
        foreach (var note in engine.Trips) all[KeyOf(note)] = evidence.Of(note).AvoidedBy;
        return all;
    }
}
