using Fractions;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>A plan's own cycle is not in step with the recording: what every monitor does over all phases, not one lucky phase.</summary>
/// <remarks>Which samples the cycles see changes only where a cycle passes a sample, so only the phases (t_k + inputDelay) mod T matter, and one more where
/// the last cycle drops out. Between two of them a trip moves with the phase and nothing else changes. Exact.</remarks>
public static class PhaseStudy
{
    /// <summary>Studies all phases of the plan's cycle.</summary>
    /// <param name="plan">A plan with a cycle of its own.</param>
    /// <param name="trace">The recording.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>One entry a monitor, stops included, in order.</returns>
    /// <exception cref="InputException">The plan is wrong or has no cycle of its own, or the recording lacks what it needs.</exception>
    public static IReadOnlyList<PhaseOutcome> Of(Plan plan, Trace trace, CancellationToken cancel = default)
    {
        PlanChecks.Require(plan);
        Require(plan);
        var inputs = new Inputs(plan, trace);
        var phases = Phases(trace.Times, plan.Cycle!.Nanoseconds, plan.InputDelay?.Nanoseconds ?? 0);
        var outcomes = new SortedDictionary<(string, string), PhaseOutcome>();
        for (var k = 0; k < phases.Count; k++)
        {
            var stretch = (k + 1 < phases.Count ? phases[k + 1] : plan.Cycle.Nanoseconds) - phases[k] - 1;
            var engine = Replay.RunEngine(plan with { Phase = Nanoseconds(phases[k]) }, inputs, cancel);
            foreach (var run in engine.Runs)
            {
                var first = engine.Trips.Where(trip => trip.Monitor == run).Select(trip => (long?)trip.Cycle.Time).Min();
                var before = outcomes.GetValueOrDefault((run.Axis, run.Name)) ?? new(run.Axis, run.Name, null, null, null, null, null);
                outcomes[(run.Axis, run.Name)] = before.With(phases[k], stretch, first) with { Limits = Limits(before.Limits, run, engine, phases[k]) };
            }
        }

        return [.. outcomes.Values];
    }

    // Between two phases that matter a cycle sees the same samples, and cycles are as far apart as ever: the critical limit stays.
    private static IReadOnlyList<PhaseLimit> Limits(IReadOnlyList<PhaseLimit> before, MonitorRun run, Engine engine, long phase)
    {
        if (run.IsStop) return [];
        var limits = new List<PhaseLimit>();
        for (var s = 0; s < run.Sides.Count; s++)
        {
            var (side, sweep) = (run.Sides[s], new SideSweep(run, s, engine.Clock));
            for (var level = 0; level < side.Limits.Count; level++)
            {
                var found = sweep.Critical(level, run.Filter, engine.Done).Value is { } value ? ExactDouble.Nearest(side.Shown(value.Exact())) : (double?)null;
                var here = new PhaseLimit(side.Name, side.HasLevels ? level : null, found, Seconds.Of(phase), found, Seconds.Of(phase));
                limits.Add(before.Count == 0 ? here : before[limits.Count].With(here));
            }
        }

        return limits;
    }

    /// <summary>A plan without a cycle of its own has no phases.</summary>
    internal static void Require(Plan plan)
    {
        if (plan.Cycle is null) throw new InputException(new Problem("cycle", "monitors run once a sample, so there is no phase", "give a cycle, such as \"4 ms\""));
    }

    /// <summary>The phases that matter, rising from 0, ns.</summary>
    internal static IReadOnlyList<long> Phases(ReadOnlySpan<long> times, long cycle, long inputDelay)
    {
        var phases = new SortedSet<long> { 0, (times[^1] + inputDelay + 1) % cycle };
        foreach (var time in times) phases.Add((time + inputDelay) % cycle);
        return [.. phases];
    }

    private static Quantity Nanoseconds(long value) => new(new Fraction(value), Unit.Parse("ns"));
}
