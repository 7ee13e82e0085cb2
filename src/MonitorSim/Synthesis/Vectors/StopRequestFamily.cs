using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What becomes of an axis when the request of a stop goes: SS2 and SOS let it run again, STO and SS1 only after an acknowledgement.</summary>
internal sealed class StopRequestFamily(Bench bench, string axis, string stop)
{
    private readonly Aftermath _after = new(bench, axis);

    private bool NeedsAcknowledgement => stop is "STO" or "SS1";

    /// <summary>Whether SS2 would be at its time limit before standstill has lasted: then the request goes while it still stops.</summary>
    private bool IsCutShort => stop == "SS2" && bench.Plan.Axes[axis].Stops.Ss2 is { } ss2 && StopEnd.CyclesAllowed(bench, ss2) < StopEnd.Cycles(bench, ss2);

    private AxisState Ended => NeedsAcknowledgement ? AxisState.TorqueOff : IsCutShort ? AxisState.StoppingToHold : AxisState.Holding;

    public void Make(Harvest harvest)
    {
        if (new Demands(bench).ByRequest(axis, stop) is not { } calling) return;
        List<Branch> branches = [Of("request", "present")];
        if (calling.CanBeAbsent) branches.Add(Of("request", NeedsAcknowledgement ? "gone, not acknowledged" : "gone"));
        if (calling.CanBeAbsent && NeedsAcknowledgement && bench.Plan.Acknowledge is not null)
            branches.AddRange([Of("acknowledge", "while it is requested"), Of("acknowledge", "after its request has gone")]);
        if (calling.Unreachable is { } why) harvest.Miss(why, branches);
        else harvest.Try(branches, () => MakeRequested(calling));
    }

    private Branch Of(string rule, string from) => new(axis, stop, null, null, rule, from);

    private Draft MakeRequested(SignalCalling calling)
    {
        var script = bench.Begin(axis);
        _after.Stand(script);
        if (calling.CanBeAbsent) calling.Leave(script);
        script.Run(_after.Cycles);
        var draft = new Draft($"{stop} requested", NeedsAcknowledgement
            ? "The stop is requested and the request goes again: the torque stays off until an acknowledgement that comes after that."
            : "The stop is requested and the request goes again: the axis runs at that cycle.", script) { CalledBy = (axis, stop) };
        if (calling.CanBeAbsent) Is(draft, AxisState.Running);
        calling.Call(script);
        script.Run(IsCutShort ? 1 : _after.Cycles);
        Is(draft, Ended);
        if (NeedsAcknowledgement && calling.CanBeAbsent) Pulse(draft, Ended);
        if (!calling.CanBeAbsent) return draft;
        calling.Leave(script);
        script.Run(1);
        Is(draft, NeedsAcknowledgement ? Ended : AxisState.Running);
        if (NeedsAcknowledgement) Pulse(draft, AxisState.Running);
        script.Run(2);
        return draft;
    }

    /// <summary>The acknowledging edge, and the state at its cycle.</summary>
    private void Pulse(Draft draft, AxisState state)
    {
        if (bench.Plan.Acknowledge is not { } acknowledge) return;
        foreach (var value in new[] { true, false })
        {
            draft.Script.Ask(bench.Board.With(draft.Script.Setting, acknowledge.Signal, value)
                ?? throw new VectorException($"no word of its column makes '{acknowledge.Signal}' {(value ? "true" : "false")}"));
            draft.Script.Run(1);
            if (value == (acknowledge.On == AcknowledgeEdge.Press)) Is(draft, state);
        }
    }

    private void Is(Draft draft, AxisState state) => draft.States.Add((axis, draft.Script.Count - 1, state));
}
