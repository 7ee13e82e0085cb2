using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What opens the latch of a trip, and what does not.</summary>
internal sealed class AcknowledgeFamily(Bench bench, TrippedWay way, AcknowledgePlan acknowledge)
{
    private readonly Subject _subject = way.Subject;
    private readonly Lever _lever = way.Lever;
    private readonly Aftermath _after = new(bench, way.Subject.Axis);

    private bool OnRelease => acknowledge.On == AcknowledgeEdge.Release;

    /// <param name="harvest">Takes the vectors.</param>
    /// <param name="bench">The plan.</param>
    /// <param name="ways">How the monitor may be made to trip; the best way first.</param>
    /// <param name="acknowledge">What acknowledges.</param>
    public static void Make(Harvest harvest, Bench bench, IReadOnlyList<TrippedWay> ways, AcknowledgePlan acknowledge)
    {
        List<AcknowledgeFamily> families = [.. ways.Select(way => new AcknowledgeFamily(bench, way, acknowledge))];
        var best = families[0];
        List<Branch> stopping = best._subject.Reaction is Reaction.Stop1 or Reaction.Stop2 ? [best.Of("acknowledge", "while still stopping")] : [];
        if (ways[0].Unreachable is { } why)
        {
            harvest.Miss(why, best.Opened().Concat(stopping));
            return;
        }

        harvest.Try(best.Opened(), families.Select(family => (Func<Draft>)(() => family.MakeOpened().Meet(family.Opened()))));
        harvest.Try(stopping, families.Select(family => (Func<Draft>)family.MakeStopping));
        if (best.StopRequest() is { } stop) harvest.Try([best.Of("acknowledge", "while a stop is requested")], families.Select(family => (Func<Draft>)(() => family.MakeRequested(stop))));
    }

    private Branch Of(string rule, string from) => new(_subject.Axis, _subject.Monitor, null, null, rule, from);

    private IEnumerable<Branch> Opened()
    {
        yield return Of("acknowledge", OnRelease ? "press" : "release");
        yield return Of("acknowledge", OnRelease ? "release" : "press");
        yield return Of("acknowledge", "watched anew");
        if (CanTripAgain) yield return Of("latch", "held until acknowledged");
    }

    /// <summary>Whether moving past the limit again disturbs nothing: while holding, the axis must stand.</summary>
    private bool CanTripAgain => _subject.Reaction != Reaction.Stop2 || _lever.Moves is Kind.Torque or Kind.Temperature;

    private SignalCalling? StopRequest() => _after.Group.SelectMany(member => new[] { "STO", "SS1", "SS2" }.Select(stop => new Demands(bench).ByRequest(member, stop)))
        .OfType<SignalCalling>().FirstOrDefault(calling => calling.Unreachable is null);

    private Draft MakeOpened()
    {
        var (script, trip) = way.Trip();
        _lever.Rest(script);
        _after.Stand(script);
        script.Run(_after.Cycles);
        if (CanTripAgain)
        {
            _lever.Exceed(script);
            script.Run(_subject.Filter + 2);
            _lever.Rest(script);
            script.Run(2);
        }

        _after.Stand(script);
        script.Run(2 + _lever.Memory);
        var draft = Draft("acknowledged", "It trips and stays tripped, whatever comes, until the acknowledging edge; then it arms and watches anew.", script);
        draft.States.Add((_subject.Axis, script.Count - 1, Aftermath.EndOf(_subject.Reaction)));
        Signal(script, true);
        if (!OnRelease) BeRunning(script);
        script.Run(1);
        draft.States.Add((_subject.Axis, script.Count - 1, OnRelease ? Aftermath.EndOf(_subject.Reaction) : AxisState.Running));
        if (OnRelease)
        {
            Signal(script, false);
            BeRunning(script);
            script.Run(1);
            draft.States.Add((_subject.Axis, script.Count - 1, AxisState.Running));
        }

        // The acknowledging cycle is the first of a new request.
        _lever.Anchor(script);
        for (var left = _subject.Delay - 2; left >= 0; left--)
        {
            if (_lever.HasReference) _lever.Rest(script);
            else _lever.ExceedUnheard(script, left);
            script.Run(1);
        }

        if (_lever.HasReference || _lever.LeadIn > 0)
        {
            _lever.Rest(script);
            script.Run(_lever.LeadIn + Math.Min(1, _subject.Delay));
        }

        _lever.Approach(script);
        var again = script.Count + _subject.Filter;
        _lever.Exceed(script);
        script.Run(_subject.Filter + 1);
        _lever.Rest(script);
        script.Run(2);
        return draft.Mean(_subject.Axis, _subject.Monitor, _lever.Side, trip, again);
    }

    /// <summary>An acknowledgement that comes while the axis still stops does nothing, then or later.</summary>
    private Draft MakeStopping()
    {
        // The edge comes in the cycle after the trip.
        var (script, trip) = way.Trip(begun => Signal(begun, OnRelease));
        if (_after.At(script, _subject.Axis, _subject.Reaction, trip) == Aftermath.EndOf(_subject.Reaction)) throw new VectorException("the stop ends in the cycle in which it begins");
        _lever.Rest(script);
        KeepMoving(script);
        Signal(script, !OnRelease);
        script.Run(1);
        _after.Stand(script);
        script.Run(1);
        Signal(script, false);
        script.Run(_after.Cycles);
        var draft = Draft("acknowledged too early", "It trips, and the acknowledging edge comes while the axis still stops: nothing is acknowledged.", script).Mean(_subject.Axis, _subject.Monitor, _lever.Side, trip);
        draft.States.Add((_subject.Axis, trip + 1, _subject.Reaction == Reaction.Stop1 ? AxisState.StoppingToOff : AxisState.StoppingToHold));
        draft.States.Add((_subject.Axis, script.Count - 1, Aftermath.EndOf(_subject.Reaction)));
        return draft;
    }

    /// <summary>While a stop is requested the latch stays; once the request has gone, the next edge opens it.</summary>
    private Draft MakeRequested(SignalCalling stop)
    {
        var (script, trip) = way.Trip();
        var before = script.Setting;
        _lever.Rest(script);
        _after.Stand(script);
        script.Run(_after.Cycles);
        stop.Call(script);
        script.Run(_after.Cycles);
        Pulse(script);
        script.Ask(before);
        script.Run(2);
        var still = script.Count - 1;
        if (CanTripAgain)
        {
            _lever.Exceed(script);
            script.Run(_subject.Delay + _subject.Filter + _lever.LeadIn + 2);
            _lever.Rest(script);
            script.Run(1);
            _after.Stand(script);
            script.Run(2);
        }

        Signal(script, true);
        if (!OnRelease) BeRunning(script);
        script.Run(1);
        Signal(script, false);
        if (OnRelease) BeRunning(script);
        script.Run(1);
        var opened = script.Count - 1;
        var draft = Draft("acknowledged while a stop is requested", "It trips, a stop is requested, and the acknowledging edge does nothing; the same edge without the request lets the axis run.", script)
            .Mean(_subject.Axis, _subject.Monitor, _lever.Side, trip);
        if (_subject.Reaction is Reaction.Stop0 or Reaction.Stop1) draft.States.Add((_subject.Axis, still, AxisState.TorqueOff));
        draft.States.Add((_subject.Axis, opened, AxisState.Running));
        return draft;
    }

    /// <summary>From the acknowledging cycle on the axis runs, so that standing may already be past a limit again.</summary>
    private void BeRunning(Script script)
    {
        if (!_lever.HasReference) _lever.Rest(script);
    }

    /// <summary>Standstill must not end the stop before the edge comes.</summary>
    private void KeepMoving(Script script)
    {
        var plan = bench.Plan.Axes[_subject.Axis];
        var stop = (_subject.Reaction == Reaction.Stop1 ? plan.Stops.Ss1 : plan.Stops.Ss2)!;
        if (StopEnd.Cycles(bench, stop) >= 2) return;
        if (stop.Variant == StopVariant.Time) throw new VectorException("the stop is over before an edge can come");
        script.Want(_subject.Axis, Kind.Velocity, Target.Past(plan.Standstill?.Exact ?? Fractions.Fraction.Zero, upper: true));
    }

    private Draft Draft(string name, string says, Script script) => new($"{_subject.Monitor} {name}", says, script);

    private void Signal(Script script, bool value) =>
        script.Ask(bench.Board.With(script.Setting, acknowledge.Signal, value) ?? throw new VectorException($"no word of its column makes '{acknowledge.Signal}' {(value ? "true" : "false")}"));

    private void Pulse(Script script)
    {
        Signal(script, true);
        script.Run(1);
        Signal(script, false);
        script.Run(1);
    }
}
