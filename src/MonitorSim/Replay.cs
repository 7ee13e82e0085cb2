using MonitorSim.Motion;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim;

/// <summary>Replays a recording through the monitors of a plan.</summary>
public static class Replay
{
    /// <summary>Replays a whole recording.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="trace">The recording.</param>
    /// <param name="cancel">Stops the replay.</param>
    /// <exception cref="InputException">The plan is wrong, or the recording lacks what it needs.</exception>
    public static ReplayResult Run(Plan plan, Trace trace, CancellationToken cancel = default) => Run(plan, trace, [], cancel);

    /// <summary>Replays a whole recording in which something goes wrong.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="trace">The recording.</param>
    /// <param name="faults">What goes wrong, and where.</param>
    /// <param name="cancel">Stops the replay.</param>
    /// <exception cref="InputException">The plan is wrong, the recording lacks what it needs, or a fault does not fit the plan.</exception>
    public static ReplayResult Run(Plan plan, Trace trace, IReadOnlyList<Injection> faults, CancellationToken cancel = default)
    {
        PlanChecks.Require(plan);
        var inputs = InputsOf(plan, trace, faults);
        var engine = RunEngine(plan, inputs, cancel, faults: faults);
        return new ResultBuilder(plan, inputs, engine).Build(trace.Name, trace.Sha256);
    }

    /// <summary>What the replay sees of a recording, acknowledgements as late as faults make them.</summary>
    internal static Inputs InputsOf(Plan plan, Trace trace, IReadOnlyList<Injection> faults)
    {
        var inputs = new Inputs(plan, trace);
        foreach (var late in faults.OfType<LateAcknowledgement>())
            if (plan.Acknowledge is { } acknowledge) inputs.Delay(acknowledge.Signal, late.Delay.Nanoseconds);
        return inputs;
    }

    internal static Engine RunEngine(Plan plan, Inputs inputs, CancellationToken cancel, bool everyCycle = false,
        IReadOnlyList<Injection>? faults = null)
    {
        var engine = new Engine(plan, inputs, everyCycle, faults);
        var sample = 0;
        for (var steps = 0; engine.Done < engine.Clock.Count; steps++)
        {
            if ((steps & 0xFFF) == 0) cancel.ThrowIfCancellationRequested();
            var cycle = engine.Clock.At(engine.Done, sample);
            sample = cycle.Sample;
            engine.Step(cycle);
        }

        return engine;
    }
}
