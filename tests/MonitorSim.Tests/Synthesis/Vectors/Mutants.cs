using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Tests.Synthesis.Vectors;

/// <summary>A wrong rule, as plans that make a right replay behave as one with that rule would.</summary>
/// <param name="Name">The wrong rule.</param>
/// <param name="Changes">The plans that stand for it, each with what was changed; none where the plan has nothing that the rule could show on.</param>
public sealed record Mutant(string Name, Func<Plan, Quantity, IEnumerable<(string What, Plan Plan)>> Changes)
{
    /// <inheritdoc/>
    public override string ToString() => Name;

    /// <summary>Changes every monitor for which there is something to change, one at a time. The function is given the axis, the monitor and the length of a cycle.</summary>
    public static Mutant OfMonitor(string name, Func<AxisPlan, MonitorPlan, Quantity, MonitorPlan?> change) => new(name, (plan, period) =>
        from axis in plan.Axes
        from index in Enumerable.Range(0, axis.Value.Monitors.Count)
        let changed = change(axis.Value, axis.Value.Monitors[index], period)
        where changed is not null
        select ($"{axis.Key}.{changed.Name}", With(plan, axis.Key, axis.Value with { Monitors = [.. axis.Value.Monitors.Select((monitor, i) => i == index ? changed : monitor)] })));

    /// <summary>Changes the stops of every axis for which there is something to change, one at a time.</summary>
    public static Mutant OfStops(string name, Func<AxisPlan, StopsPlan, Quantity, StopsPlan?> change) => new(name, (plan, period) =>
        from axis in plan.Axes
        let changed = change(axis.Value, axis.Value.Stops, period)
        where changed is not null
        select (axis.Key, With(plan, axis.Key, axis.Value with { Stops = changed })));

    /// <summary>Whether a recording can show a speed that is a limit itself: what a smoothing estimator gives hardly ever is.</summary>
    public static bool HasExactSpeed(AxisPlan axis) => (axis.Channels.Velocity?.Estimator?.Name ?? EstimatorName.Difference) == EstimatorName.Difference;

    /// <summary>Whether a recording can show a torque that is a limit itself: carried from a motor's torque to a force it has the factor π in it.</summary>
    public static bool HasExactTorque(AxisPlan axis) => axis.Channels.Torque?.Side != RecordedSide.Motor;

    /// <summary>Changes one axis of a plan.</summary>
    public static Plan With(Plan plan, string axis, AxisPlan changed) => plan with { Axes = new Dictionary<string, AxisPlan>(plan.Axes) { [axis] = changed } };

    /// <summary>A time with so many cycles and nanoseconds more or less.</summary>
    public static Quantity Later(Quantity? time, Quantity period, int cycles, int nanoseconds = 0) =>
        Quantity.Parse($"{(time?.Nanoseconds ?? 0) + cycles * period.Nanoseconds + nanoseconds} ns");

    /// <summary>The same limit, so little lower that the limit itself exceeds it.</summary>
    public static Quantity Lower(Quantity limit) => limit with { Number = limit.Number - limit.Number.Abs() / 1_000_000_000 };

    /// <summary>The same limit with room for a step of a vector's grid, which is at most a five-thousandth of it.</summary>
    public static Quantity Higher(Quantity limit) => limit with { Number = limit.Number + limit.Number.Abs() / 4_900 };
}
