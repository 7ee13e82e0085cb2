using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Synthesis.Vectors;

/// <summary>Wrong rules of stops, of the reactor and of acknowledgements.</summary>
internal static class StopMutants
{
    public static IEnumerable<Mutant> All =>
    [
        OfRamps("the stop by time ends a cycle late", (stop, period) => stop.Variant == StopVariant.Time ? stop with { Time = Mutant.Later(stop.Time, period, 1) } : null),
        OfRamps("the stop by time ends a cycle early", (stop, period) => stop.Variant == StopVariant.Time ? stop with { Time = Mutant.Later(stop.Time, period, -1) } : null),
        OfRamps("standstill need not last", (stop, _) => stop.Settle is null ? null : stop with { Settle = null }),
        OfRamps("standstill must last a cycle longer", (stop, period) => stop.Variant == StopVariant.Time ? null : stop with { Settle = Mutant.Later(stop.Settle, period, 1) }),
        Mutant.OfStops("the ramp itself with its tolerance trips", (axis, stops, _) => stops.Ss1?.Tolerance is not { } tolerance || !Mutant.HasExactSpeed(axis) || !IsCalled(axis, stops.Ss1, Reaction.Stop1) ? null
            : stops with { Ss1 = stops.Ss1 with { Tolerance = Mutant.Lower(tolerance) } }),
        OfRamps("the ramp has no tolerance", (stop, _) => stop.Tolerance is null ? null : stop with { Tolerance = stop.Tolerance with { Number = Fraction.Zero } }),
        OfRamps("the ramp begins at once", (stop, _) => stop.Delay is null ? null : stop with { Delay = null }),
        OfRamps("the ramp begins a cycle late", (stop, period) => stop.Variant == StopVariant.Time ? null : stop with { Delay = Mutant.Later(stop.Delay, period, 1) }),
        OfRamps("the deceleration demanded is halved", (stop, _) => stop.Deceleration is null ? null : stop with { Deceleration = stop.Deceleration with { Number = stop.Deceleration.Number / 2 } }),
        OfRamps("the time limit is ignored", (stop, _) => stop.TimeLimit is null ? null : stop with { TimeLimit = null }),
        OfRamps("the time limit trips a cycle early", (stop, period) => stop.TimeLimit is null ? null : stop with { TimeLimit = Mutant.Later(stop.TimeLimit, period, -1) }),
        OfRamps("the filter of the deceleration is ignored", (stop, _) => stop.Filter is null ? null : stop with { Filter = null }),
        new("standstill is reached only below its speed", (plan, _) => from axis in plan.Axes
            where axis.Value is { Standstill: not null, Stops.Ss1.Variant: StopVariant.Ramp } && Mutant.HasExactSpeed(axis.Value)
            select (axis.Key, Mutant.With(plan, axis.Key, axis.Value with { Standstill = Mutant.Lower(axis.Value.Standstill!) }))),
        Mutant.OfStops("residual torque is not looked at", (_, stops, _) => stops.Sto?.Residual is null ? null : stops with { Sto = stops.Sto with { Residual = null, Grace = null } }),
        Mutant.OfStops("the residual itself trips", (axis, stops, _) => stops.Sto?.Residual is null || !Mutant.HasExactTorque(axis) ? null : stops with { Sto = stops.Sto with { Residual = Mutant.Lower(stops.Sto.Residual) } }),
        Mutant.OfStops("there is no grace", (_, stops, _) => stops.Sto?.Grace is null ? null : stops with { Sto = stops.Sto with { Grace = null } }),
        Mutant.OfStops("grace lasts a cycle longer", (_, stops, period) => stops.Sto?.Residual is null ? null : stops with { Sto = stops.Sto with { Grace = Mutant.Later(stops.Sto.Grace, period, 1) } }),
        Mutant.OfStops("the brake's slip is measured a cycle late", (_, stops, period) => stops.Sbc?.Window is null ? null : stops with { Sbc = stops.Sbc with { Apply = Mutant.Later(stops.Sbc.Apply, period, 1) } }),
        Mutant.OfStops("the brake's window itself trips", (_, stops, _) => stops.Sbc?.Window is null ? null : stops with { Sbc = stops.Sbc with { Window = Mutant.Lower(stops.Sbc.Window) } }),
        Mutant.OfStops("the window of holding itself trips", (axis, stops, _) => stops.Sos?.Window is null || !IsHeld(axis) ? null : stops with { Sos = stops.Sos with { Window = Mutant.Lower(stops.Sos.Window) } }),
        new("a group does not stop together", (plan, _) => plan.Groups.Count == 0 ? [] : [("groups", plan with { Groups = new Dictionary<string, IReadOnlyList<string>>() })]),
        new("acknowledged on the wrong edge", (plan, _) => plan.Acknowledge is not { } acknowledge ? []
            : [("acknowledge", plan with { Acknowledge = acknowledge with { On = acknowledge.On == AcknowledgeEdge.Press ? AcknowledgeEdge.Release : AcknowledgeEdge.Press } })]),
        new("nothing is ever acknowledged", (plan, _) => plan.Acknowledge is null ? [] : [("acknowledge", plan with { Acknowledge = null })]),
    ];

    private static bool IsHeld(AxisPlan axis) => axis.Stops.Sos?.Request is not null || axis.Stops.Ss2?.Request is not null;

    private static Mutant OfRamps(string name, Func<RampStopPlan, global::MonitorSim.Quantities.Quantity, RampStopPlan?> change) => Mutant.OfStops(name, (axis, stops, period) =>
        IsCalled(axis, stops.Ss1, Reaction.Stop1) && change(stops.Ss1!, period) is { } ss1 ? stops with { Ss1 = ss1 }
        : stops.Ss2?.Request is not null && change(stops.Ss2, period) is { } ss2 ? stops with { Ss2 = ss2 }
        : null);

    /// <summary>Whether something on the axis itself can begin the stop.</summary>
    private static bool IsCalled(AxisPlan axis, RampStopPlan? stop, Reaction reaction) =>
        stop is not null && (stop.Request is not null || axis.Monitors.Any(monitor => (monitor.Reaction ?? Reaction.Stop1) == reaction && monitor.Function is not ("SSM" or "SCA" or "SMT")));
}
