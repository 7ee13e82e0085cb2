using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Tests.Synthesis.Vectors;

/// <summary>Wrong rules of the chain from request to trip.</summary>
internal static class ChainMutants
{
    private static readonly string[] Watched = ["SLS", "SDI", "SOS"];

    public static IEnumerable<Mutant> All =>
    [
        Mutant.OfMonitor("the limit itself trips (>= for >)", (axis, monitor, period) => Mutant.HasExactSpeed(axis) ? Limit(monitor, Mutant.Lower) : null),
        Mutant.OfMonitor("one step past the limit is tolerated", (_, monitor, period) => Limit(monitor, Mutant.Higher)),
        Mutant.OfMonitor("the sign is heeded where magnitudes count", (_, monitor, period) => monitor is Sls { Signed: false, Levels: null } sls ? sls with { Signed = true } : null),
        Mutant.OfMonitor("the filter is one cycle too long", (_, monitor, period) => IsWatched(monitor) ? monitor with { Filter = Mutant.Later(monitor.Filter, period, 1) } : null),
        Mutant.OfMonitor("the filter trips only after it, not at it", (_, monitor, period) => IsWatched(monitor) && monitor.Filter is not null ? monitor with { Filter = Mutant.Later(monitor.Filter, period, 0, 1) } : null),
        Mutant.OfMonitor("the filter is one cycle too short", (_, monitor, period) => IsWatched(monitor) && monitor.Filter is not null ? monitor with { Filter = Mutant.Later(monitor.Filter, period, -1) } : null),
        Mutant.OfMonitor("the filter is ignored", (_, monitor, period) => IsWatched(monitor) && monitor.Filter is not null ? monitor with { Filter = null } : null),
        Mutant.OfMonitor("the delay is ignored", (_, monitor, period) => IsWatched(monitor) && monitor.Delay is not null ? monitor with { Delay = null } : null),
        Mutant.OfMonitor("the delay is one cycle too long", (_, monitor, period) => IsWatched(monitor) && monitor.Delay is not null ? monitor with { Delay = Mutant.Later(monitor.Delay, period, 1) } : null),
        Mutant.OfMonitor("the delay ends after it, not at it", (_, monitor, period) => IsWatched(monitor) && monitor.Delay is not null ? monitor with { Delay = Mutant.Later(monitor.Delay, period, 0, 1) } : null),
        Mutant.OfMonitor("the delay is one cycle too short", (_, monitor, period) => IsWatched(monitor) && monitor.Delay is not null ? monitor with { Delay = Mutant.Later(monitor.Delay, period, -1) } : null),
        Mutant.OfMonitor("the request is ignored", (_, monitor, period) => IsWatched(monitor) && monitor.Request is not null ? monitor with { Request = null } : null),
        Mutant.OfMonitor("it never watches", (_, monitor, period) => IsWatched(monitor) ? monitor with { Request = "never" } : null),
        Mutant.OfMonitor("a trip does nothing", (_, monitor, period) => IsWatched(monitor) && monitor.Reaction != Reaction.None ? monitor with { Reaction = Reaction.None } : null),
        Mutant.OfMonitor("stop 1 takes the torque at once", (_, monitor, period) => IsWatched(monitor) && (monitor.Reaction ?? Reaction.Stop1) == Reaction.Stop1 ? monitor with { Reaction = Reaction.Stop0 } : null),
        Mutant.OfMonitor("the permitted direction is the other one", (_, monitor, period) => monitor is Sdi sdi ? sdi with { Allow = sdi.Allow == Direction.Positive ? Direction.Negative : Direction.Positive } : null),
    ];

    private static bool IsWatched(MonitorPlan monitor) => Watched.Contains(monitor.Function);

    private static MonitorPlan? Limit(MonitorPlan monitor, Func<Quantity, Quantity> moved) => monitor switch
    {
        Sls { Limit: { } limit, Signed: false } sls => sls with { Limit = moved(limit) },
        Sdi sdi => sdi with { Tolerance = moved(sdi.Tolerance) },
        Sos sos => sos with { Window = moved(sos.Window) },
        _ => null,
    };
}
