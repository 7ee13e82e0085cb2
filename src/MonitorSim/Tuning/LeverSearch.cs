namespace MonitorSim.Tuning;

/// <summary>Asks each lever of a stopping chain alone how far it has to go, or may go, for room.</summary>
/// <param name="limit">The limit; production says what it needs.</param>
/// <param name="need">What production is taken to need.</param>
/// <param name="hazard">What the hazard allows.</param>
/// <param name="chain">The chain as it is.</param>
internal sealed class LeverSearch(TunedLimit limit, Need need, Hazard hazard, StoppingChain chain)
{
    private const long Second = 1_000_000_000;

    public IReadOnlyList<Lever> All() =>
        [Filter(), Cycle(), Time("inputDelay", chain.InputDelay, x => chain with { InputDelay = x }),
         Time("reactionDelay", chain.ReactionDelay, x => chain with { ReactionDelay = x }), .. Deceleration()];

    /// <summary>A filter works on both ends: a longer one lets production need less, and the hazard allow less.</summary>
    private Lever Filter()
    {
        var now = (long)(limit.Filter * Second);
        return new("filter", "s", chain.Filter, Allowed(chain) >= need.Of(limit) ? LongestFilter() : NearestFilter(now), 0, need.At(0, limit), Allowed(chain with { Filter = 0 }));
    }

    // Within a step of the frontier production needs the same, so that only its shortest filter and the longest that still leaves room matter.
    private double? LongestFilter()
    {
        foreach (var (from, until) in Steps().Reverse())
            if (HasRoom(from)) return Largest.Whole(from, until, HasRoom) / (double)Second;
        return null;
    }

    private double? NearestFilter(long now)
    {
        long? nearest = null;
        foreach (var (from, until) in Steps())
        {
            if (!HasRoom(from)) continue;
            var there = Largest.Whole(from, until, HasRoom);
            var candidate = Math.Clamp(now, from, there);
            if (nearest is not { } best || Math.Abs(candidate - now) < Math.Abs(best - now)) nearest = candidate;
        }

        return nearest / (double)Second;
    }

    private IEnumerable<(long From, long Until)> Steps()
    {
        long from = 0;
        foreach (var step in limit.Frontier)
        {
            var until = (long)(step.Filter * Second);
            yield return (from, until);
            from = until + 1;
        }
    }

    private bool HasRoom(long filter) => Allowed(chain with { Filter = filter / (double)Second }) >= need.At(filter / (decimal)Second, limit);

    // Without any cycle there is room if there is with one. A filter counts in whole cycles: while it takes k of them, a longer cycle lets the hazard allow less, and from w/(k - 1) on it takes one fewer.
    private Lever Cycle()
    {
        const int MostCycles = 1000;
        if (chain.Filter == 0) return Time("cycle", chain.Cycle, x => chain with { Cycle = x });
        bool HasRoomAt(double cycle) => Allowed(chain with { Cycle = cycle }) >= need.Of(limit);
        double? enough = HasRoomAt(0) ? 0 : null;
        if (enough is not null && HasRoomAt(chain.Filter / MostCycles))
        {
            var k = HasRoomAt(chain.Filter) ? 1 : 1 + Largest.Whole(1, MostCycles, n => !HasRoomAt(chain.Filter / n));
            var until = k == 1 ? double.MaxValue : chain.Filter / (k - 1);
            enough = HasRoomAt(until) ? until : Largest.Between(chain.Filter / k, until, HasRoomAt);
        }

        return new("cycle", "s", chain.Cycle, enough, 0, need.Of(limit), Allowed(chain with { Cycle = 0 }));
    }

    private Lever Time(string name, double present, Func<double, StoppingChain> with)
    {
        var needed = need.Of(limit);
        var enough = Largest.Value(x => Allowed(with(x)) >= needed);
        return new(name, "s", present, enough is { } value && double.IsFinite(value) ? value : null, 0, needed, Allowed(with(0)));
    }

    private IEnumerable<Lever> Deceleration()
    {
        if (chain.Stopping.Times(2) is not { } twice) yield break;
        var needed = need.Of(limit);
        var (unit, one) = chain.Stopping is ConstantDeceleration constant ? (limit.Unit + "²", constant.Deceleration) : ("1", 1.0);
        var enough = Largest.Smallest(factor => double.IsFinite(factor) && chain.Stopping.Times(factor) is { } stop && Allowed(chain with { Stopping = stop }) >= needed);
        yield return new("deceleration", unit, one, enough * one, 2 * one, needed, Allowed(chain with { Stopping = twice }));
    }

    private double? Allowed(StoppingChain with) => hazard.Allows(with).Limit;
}
