using MonitorSim.Channels;
using MonitorSim.Quantities;

namespace MonitorSim.Replays;

/// <summary>Turns what the engine noted into a <see cref="ReplayResult"/>: exact readings to numbers, nanoseconds to seconds, all lists in order.</summary>
internal sealed class ResultBuilder(Plan plan, Inputs inputs, Engine engine)
{
    public ReplayResult Build(string trace, string? sha256)
    {
        foreach (var run in engine.Runs) run.Finish(engine.Done);
        var evidence = new Evidence(engine.Clock, engine.Done);
        var left = engine.Motions.Axes.Where(axis => axis.Value.LeftAt is not null).ToDictionary(axis => axis.Key, axis => axis.Value);
        var avoided = new AvoidedOnRecording(plan, inputs, engine.Motions, left);
        var result = new ReplayResult
        {
            Plan = plan,
            Trace = trace,
            TraceSha256 = sha256,
            Samples = inputs.Times.Count,
            Duration = Seconds.Of(inputs.Times.Count == 0 ? 0 : inputs.Times[inputs.Times.Count - 1]),
            Trips = Ordered(engine.Trips.Select(note => avoided.Of(note, evidence.Of(note)))),
            Excursions = Ordered(engine.Runs.SelectMany(run => run.Excursions).Select(Excursion)),
            Outputs = Outputs(engine),
            States = States(engine),
            Headroom = Ordered(engine.Runs.SelectMany(evidence.Headroom), _ => 0, h => (h.Axis, h.Monitor, "")),
            Coverage = Coverage(engine),
            Expect = [],
            Events = Ordered(engine.Events),
            Warnings = [.. Warnings.Of(plan, inputs, engine)],
            Simulated = [.. left.OrderBy(axis => axis.Key, StringComparer.Ordinal).Select(axis => new SimulatedMotion(axis.Key, Seconds.Of(axis.Value.LeftAt!.Value), axis.Value.Start, axis.Value.States))],
            Watching = [.. engine.Runs.Select(run => new WatchTimeline(run.Axis, run.Name,
                [.. run.Stretches.Select(s => new WatchStretch(Seconds.Of(s.RequestedAt), Seconds.Of(s.WatchingAt), Seconds.Of(engine.Clock.TimeOf(s.Last))))]))],
        };
        return result with { Expect = Expectations.Of(plan, result, inputs, engine) };
    }

    public static Excursion Excursion(RunNote note) => new(note.Monitor.Axis, note.Monitor.Name, note.Side.Name, Seconds.Of(note.From), Seconds.Of(note.Until),
        ExactDouble.Nearest(note.Side.Shown(note.Peak.Exact())), Seconds.Of(note.PeakAt), note.Trips);

    public static IReadOnlyList<Coverage> Coverage(Engine engine) => Ordered(
        engine.Runs.Select(run => new Coverage(run.Axis, run.Name, run.Track.Requests, Seconds.Of(run.Watched(engine.Clock, engine.Done)), run.TripCount)), _ => 0, c => (c.Axis, c.Monitor, ""));

    public static IReadOnlyList<StateTimeline> States(Engine engine) => [.. engine.Reactors.Select(axis => new StateTimeline(axis.Key,
        [.. axis.Value.Changes.Select(change => new StateChange(Seconds.Of(change.Time), change.State, change.Cause))]))];

    public static IReadOnlyList<OutputTimeline> Outputs(Engine engine) => Ordered(
        [.. engine.Runs.Where(run => run.HasOutput).Select(run => Timeline(run.Axis, run.Name, run.OutputEdges)),
            .. engine.Reactors.Where(axis => axis.Value.Stops.HasBrake).Select(axis => Timeline(axis.Key, "SBC", axis.Value.BrakeEdges))],
        _ => 0, output => (output.Axis, output.Monitor, ""));

    public static IReadOnlyList<Trip> Ordered(IEnumerable<Trip> trips) => Ordered(trips, trip => trip.Time, trip => (trip.Axis, trip.Monitor, trip.Side));

    public static IReadOnlyList<Excursion> Ordered(IEnumerable<Excursion> excursions) => Ordered(excursions, e => e.From, e => (e.Axis, e.Monitor, e.Side));

    public static IReadOnlyList<ReplayEvent> Ordered(IEnumerable<ReplayEvent> events) => Ordered(events, e => e.Time, e => (e.Axis, e.Source, ""));

    private static OutputTimeline Timeline(string axis, string monitor, List<(long Time, bool On)> edges) =>
        new(axis, monitor, [.. edges.Select(edge => new OutputEdge(Seconds.Of(edge.Time), edge.On))]);

    private static List<T> Ordered<T>(IEnumerable<T> items, Func<T, decimal> time, Func<T, (string Axis, string Monitor, string Side)> key) =>
        [.. items.OrderBy(time).ThenBy(item => key(item).Axis, StringComparer.Ordinal).ThenBy(item => key(item).Monitor, StringComparer.Ordinal)
            .ThenBy(item => key(item).Side, StringComparer.Ordinal)];
}
