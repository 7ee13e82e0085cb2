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
    public static ReplayResult Run(Plan plan, Trace trace, CancellationToken cancel = default)
    {
        PlanChecks.Require(plan);
        var inputs = new Inputs(plan, trace);
        var engine = RunEngine(plan, inputs, cancel);
        return new ResultBuilder(plan, inputs, engine).Build(trace.Name, trace.Sha256);
    }

    internal static Engine RunEngine(Plan plan, Inputs inputs, CancellationToken cancel, bool everyCycle = false)
    {
        var engine = new Engine(plan, inputs, everyCycle);
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
