using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What opens the latch of a trip, and what does not.</summary>
internal sealed class AcknowledgeFamily(Bench bench, Subject subject, Lever lever, AcknowledgePlan acknowledge)
{
    private readonly Aftermath _after = new(bench, subject.Axis);

    private bool OnRelease => acknowledge.On == AcknowledgeEdge.Release;

    public void Make(Harvest harvest)
    {
        List<Branch> opened = [Of("acknowledge", OnRelease ? "press" : "release"), Of("acknowledge", OnRelease ? "release" : "press"), Of("acknowledge", "watched anew")];
        if (CanTripAgain) opened.Add(Of("latch", "held until acknowledged"));
        List<Branch> stopping = subject.Reaction is Reaction.Stop1 or Reaction.Stop2 ? [Of("acknowledge", "while still stopping")] : [];
        if ((subject.Calling.Unreachable ?? lever.Unreachable) is { } why)
        {
            harvest.Miss(why, opened.Concat(stopping));
            return;
        }

        harvest.Try(opened, MakeOpened);
        harvest.Try(stopping, MakeStopping);
        if (StopRequest() is { } stop) harvest.Try([Of("acknowledge", "while a stop is requested")], () => MakeRequested(stop));
    }

    private Branch Of(string rule, string from) => new(subject.Axis, subject.Monitor, null, null, rule, from);

    /// <summary>Whether moving past the limit again disturbs nothing: while holding, the axis must stand.</summary>
    private bool CanTripAgain => subject.Reaction != Reaction.Stop2 || lever.Moves is Kind.Torque or Kind.Temperature;

    private SignalCalling? StopRequest() => _after.Group.SelectMany(member => new[] { "STO", "SS1", "SS2" }.Select(stop => new Demands(bench).ByRequest(member, stop)))
        .OfType<SignalCalling>().FirstOrDefault(calling => calling.Unreachable is null);

    private Draft MakeOpened()
    {
        var (script, trip) = Tripped();
        _after.Stand(script);
        script.Run(_after.Cycles);
        if (CanTripAgain)
        {
            lever.Exceed(script);
            script.Run(subject.Filter + 2);
            lever.Rest(script);
            script.Run(2);
        }

        _after.Stand(script);
        script.Run(2);
        var draft = Draft("acknowledged", "It trips and stays tripped, whatever comes, until the acknowledging edge; then it arms and watches anew.", script);
        draft.States.Add((subject.Axis, script.Count - 1, Aftermath.EndOf(subject.Reaction)));
        Signal(script, true);
        script.Run(1);
        draft.States.Add((subject.Axis, script.Count - 1, OnRelease ? Aftermath.EndOf(subject.Reaction) : AxisState.Running));
        if (OnRelease)
        {
            Signal(script, false);
            script.Run(1);
            draft.States.Add((subject.Axis, script.Count - 1, AxisState.Running));
        }

        // The acknowledging cycle is the first of a new request.
        lever.Anchor(script);
        for (var left = subject.Delay - 2; left >= 0; left--)
        {
            if (lever.HasReference) lever.Rest(script);
            else lever.ExceedUnheard(script, left);
            script.Run(1);
        }

        if (lever.HasReference || lever.LeadIn > 0)
        {
            lever.Rest(script);
            script.Run(lever.LeadIn + 1);
        }

        var again = script.Count + subject.Filter;
        lever.Exceed(script);
        script.Run(subject.Filter + 1);
        lever.Rest(script);
        script.Run(2);
        return draft.Mean(subject.Axis, subject.Monitor, lever.Side, trip, again);
    }

    /// <summary>An acknowledgement that comes while the axis still stops does nothing, then or later.</summary>
    private Draft MakeStopping()
    {
        var (script, trip) = Tripped();
        if (_after.At(script, subject.Axis, subject.Reaction, trip) == Aftermath.EndOf(subject.Reaction)) throw new VectorException("the stop ends in the cycle in which it begins");
        KeepMoving(script);
        Pulse(script);
        var during = script.Count - 1;
        _after.Stand(script);
        script.Run(_after.Cycles);
        var draft = Draft("acknowledged too early", "It trips, and the acknowledging edge comes while the axis still stops: nothing is acknowledged.", script).Mean(subject.Axis, subject.Monitor, lever.Side, trip);
        draft.States.Add((subject.Axis, during, subject.Reaction == Reaction.Stop1 ? AxisState.StoppingToOff : AxisState.StoppingToHold));
        draft.States.Add((subject.Axis, script.Count - 1, Aftermath.EndOf(subject.Reaction)));
        return draft;
    }

    /// <summary>While a stop is requested the latch stays; once the request has gone, the next edge opens it.</summary>
    private Draft MakeRequested(SignalCalling stop)
    {
        var (script, trip) = Tripped();
        var before = script.Setting;
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
            lever.Exceed(script);
            script.Run(subject.Delay + subject.Filter + lever.LeadIn + 2);
            lever.Rest(script);
            script.Run(1);
            _after.Stand(script);
            script.Run(2);
        }

        Pulse(script);
        var opened = script.Count - 1;

        // The cycle of the newest sample may come so late after it that it needs the next sample to exist.
        script.Run(1);
        var draft = Draft("acknowledged while a stop is requested", "It trips, a stop is requested, and the acknowledging edge does nothing; the same edge without the request lets the axis run.", script)
            .Mean(subject.Axis, subject.Monitor, lever.Side, trip);
        if (subject.Reaction is Reaction.Stop0 or Reaction.Stop1) draft.States.Add((subject.Axis, still, AxisState.TorqueOff));
        draft.States.Add((subject.Axis, opened, AxisState.Running));
        return draft;
    }

    /// <summary>Standstill must not end the stop before the edge comes.</summary>
    private void KeepMoving(Script script)
    {
        var plan = bench.Plan.Axes[subject.Axis];
        var stop = (subject.Reaction == Reaction.Stop1 ? plan.Stops.Ss1 : plan.Stops.Ss2)!;
        if (StopEnd.Cycles(bench, stop) >= 4) return;
        if (stop.Variant == StopVariant.Time) throw new VectorException("the stop is over before an edge can come");
        script.Want(subject.Axis, Kind.Velocity, Target.Past(plan.Standstill?.Exact ?? Fractions.Fraction.Zero, upper: true));
    }

    private (Script Script, int Trip) Tripped()
    {
        var script = bench.Begin(subject.Axis);
        lever.Prepare(script, 4 * (subject.Delay + subject.Filter) + 2 * lever.LeadIn + 60);
        lever.Rest(script);
        script.Run(1 + lever.Memory);
        new TripCalling(subject, lever).Call(script);
        script.Run(1);
        var trip = script.Count - 1;
        lever.Rest(script);
        script.Run(1);
        return (script, trip);
    }

    private Draft Draft(string name, string says, Script script) => new($"{subject.Monitor} {name}", says, script) { MayBeDisturbed = true };

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
