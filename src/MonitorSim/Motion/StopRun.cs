using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>One motion from a fault or a demand to standstill: goes from event to event, lets limits watch and the sequence of a stop act.</summary>
/// <param name="plant">What moves.</param>
/// <param name="programOf">How it stops, by reaction.</param>
/// <param name="faults">What is wrong.</param>
/// <param name="watchers">The limits that watch.</param>
/// <param name="horizon">How long it is followed, s.</param>
internal sealed class StopRun(Plant plant, Func<Reaction, StopProgram> programOf, MachineCondition faults, IEnumerable<Watcher> watchers, double horizon)
{
    // Friction that vanishes with the speed never quite ends a motion; this share of the largest speed counts as rest.
    private const double Negligible = 1e-6;

    private readonly PlantMotion _motion = new(plant);
    private readonly Trajectory _path = new();
    private readonly List<Watch> _watches = [.. watchers.Select(watcher => new Watch(watcher))];
    private readonly double _standstill = programOf(Reaction.None).Standstill;
    // No motion has so many events; one that does would be an error here.
    private const int MostEvents = 10_000_000;
    private readonly List<Watch> _all = [];
    private double _peak;

    /// <summary>Follows the motion from a state.</summary>
    /// <param name="start">Where it begins; its time is 0.</param>
    /// <param name="demanded">A stop that is demanded there; none: one only follows from a limit that is passed.</param>
    public StopResult From(MotionState start, Reaction demanded = Reaction.None)
    {
        var sequence = new StopSequence(plant, programOf, faults, start.Velocity);
        var state = start;
        _peak = Math.Abs(start.Velocity);
        sequence.Demand(demanded, state);
        (Watch Watch, double At)? detected = null;
        var events = 0;
        for (var isOver = false; !isOver && state.Time < horizon;)
        {
            if (events++ > MostEvents) throw new InvalidOperationException($"the motion does not get beyond {state}");
            sequence.ActDue(state);
            var segment = _motion.Next(state, sequence.Actuation);
            var until = Math.Min(Math.Min(segment.Until, sequence.NextAt), horizon);
            until = sequence.StandingFrom(segment, until);
            GatherWatches(sequence);
            foreach (var watch in _all) watch.Follow(segment, until);
            var trip = FirstTrip(sequence);
            var tripsLater = trip?.TripsAt > until;
            if (tripsLater) trip = null;
            if (trip is not null) until = Math.Max(trip.TripsAt!.Value, state.Time);
            else if (!sequence.IsPending && !tripsLater) isOver = ComesToRest(segment, sequence.Actuation, ref until);
            foreach (var watch in _all) watch.Forget(until);
            state = Take(segment, until);
            if (trip is null) continue;
            if (trip.Watcher.Reaction != Reaction.None) detected ??= (trip, state.Time);
            sequence.Take(trip, state);
        }

        return Result(start, sequence, detected);
    }

    // Those of the plan and those of the stop under way, which a stretch of motion does not change.
    private void GatherWatches(StopSequence sequence)
    {
        _all.Clear();
        _all.AddRange(_watches);
        _all.AddRange(sequence.Watches);
    }

    // Of what is certain to trip and was not taken yet, the first.
    private Watch? FirstTrip(StopSequence sequence)
    {
        Watch? first = null;
        foreach (var watch in _all)
            if (watch.TripsAt is { } at && !(first?.TripsAt <= at) && !sequence.HasTaken(watch)) first = watch;
        return first;
    }

    private MotionState Take(Segment segment, double until)
    {
        segment.EndingAt(until);
        _path.Add(segment);
        foreach (var watch in _all) watch.NoteOverrun(segment);
        var state = segment.At(until);
        _peak = Math.Max(_peak, Math.Abs(state.Velocity));
        return state;
    }

    // Whether nothing more can happen in this stretch than that the axis comes to rest, and until when it takes.
    private bool ComesToRest(Segment segment, in Actuation actuation, ref double until)
    {
        if (segment.IsRest)
        {
            until = segment.From;
            return true;
        }

        if (!_motion.IsOnlySlowed(actuation)) return false;
        var slow = Math.Max(_standstill, Negligible * _peak);
        double Slowed(double time) => slow - Math.Abs(segment.At(time).Velocity);
        if (!(Slowed(until) >= 0)) return false;
        if (_standstill == 0 && _motion.EndsByItself(segment.At(segment.From), actuation)) return false;
        until = Slowed(segment.From) >= 0 ? segment.From : Crossing.First(Slowed, segment.From, until);
        return true;
    }

    private StopResult Result(in MotionState start, StopSequence sequence, (Watch Watch, double At)? detected)
    {
        var (peak, furthest, fall, drop, gravity) = (start, 0.0, 0.0, 0.0, Math.Sign(plant.Load));
        var off = sequence.OffAt is { } offAt ? _path.At(offAt) : (MotionState?)null;
        foreach (var segment in _path.Segments)
        {
            var state = segment.At(segment.Until);
            if (Math.Abs(state.Velocity) > Math.Abs(peak.Velocity)) peak = state;
            furthest = Math.Max(furthest, Math.Abs(state.Position - start.Position));
            fall = Math.Max(fall, gravity * (state.Position - start.Position));
            if (off is { } from && state.Time > from.Time) drop = Math.Max(drop, gravity * (state.Position - from.Position));
        }

        return new()
        {
            Motion = _path,
            Time = StandingSince(),
            Distance = furthest,
            PeakSpeed = Math.Abs(peak.Velocity),
            PeakAt = peak.Time,
            Energy = plant.KineticEnergy(peak.Velocity),
            Fall = gravity == 0 ? null : fall,
            Drop = gravity == 0 || off is null ? null : drop,
            DetectedBy = detected is { } by ? (by.Watch.Watcher.Monitor, by.Watch.Watcher.Side) : null,
            DetectedAt = detected?.At,
            ActedAt = sequence.ActedAt,
            OffAt = sequence.OffAt,
            BrakedAt = sequence.BrakedAt,
            Overruns = [.. _watches.Where(watch => double.IsFinite(watch.Overrun)).Select(watch => new Overrun(watch.Watcher.Monitor, watch.Watcher.Side, watch.Overrun, watch.Watcher.Unit))],
        };
    }

    private double? StandingSince()
    {
        var slow = Math.Max(_standstill, Negligible * _peak);
        double Slowed(MotionState state) => (state.Time == _path.Until ? slow : _standstill) - Math.Abs(state.Velocity);
        if (!(Slowed(_path.End) >= 0)) return null;
        for (var k = _path.Segments.Count - 1; k >= 0; k--)
        {
            var segment = _path.Segments[k];
            if (!(Slowed(segment.At(segment.From)) >= 0))
                return Crossing.First(time => Slowed(segment.At(time)), segment.From, segment.Until);
        }

        return _path.From;
    }
}
