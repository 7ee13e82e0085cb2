using Fractions;
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
                outcomes[(run.Axis, run.Name)] = before.With(phases[k], stretch, first);
            }
        }

        return [.. outcomes.Values];
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

/// <summary>What one monitor does over all phases of the cycle. Times and phases in seconds.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Earliest">The earliest first trip; null where no phase trips.</param>
/// <param name="EarliestPhase">The phase that gives it.</param>
/// <param name="Latest">The latest first trip; null where no phase trips.</param>
/// <param name="LatestPhase">The phase that gives it.</param>
/// <param name="QuietPhase">A phase that does not trip; null where every phase trips.</param>
public sealed record PhaseOutcome(string Axis, string Monitor, decimal? Earliest, decimal? EarliestPhase, decimal? Latest, decimal? LatestPhase, decimal? QuietPhase)
{
    /// <summary>Whether it trips at some phases and not at others: chance decides on the machine.</summary>
    public bool DependsOnPhase => Earliest is not null && QuietPhase is not null;

    internal PhaseOutcome With(long phase, long stretch, long? trip)
    {
        if (trip is not { } time) return this with { QuietPhase = QuietPhase ?? Seconds.Of(phase) };
        var result = this;
        if (!(result.Earliest <= Seconds.Of(time))) result = result with { Earliest = Seconds.Of(time), EarliestPhase = Seconds.Of(phase) };
        if (!(result.Latest >= Seconds.Of(time + stretch))) result = result with { Latest = Seconds.Of(time + stretch), LatestPhase = Seconds.Of(phase + stretch) };
        return result;
    }
}
