using System.Globalization;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The times of all vectors of a plan: one sample a cycle, so that cycle i sees sample i.</summary>
/// <remarks>With a cycle of the plan's own, samples come at its period: t_k = k·T, and c_i = c_0 + i·T with c_0 the first cycle that has a sample to see.
/// On the cycle <c>trace</c> the period is the plan's rate, or else divides all delays and filters of the plan, so that each is reached exactly; times that
/// have no common period of sensible length are reached at the first cycle after them.</remarks>
internal sealed class VectorClock
{
    private const long LongestPeriod = 10_000_000;
    private const long UsualPeriod = 1_000_000;
    private const long ShortestPeriod = 1_000;
    private const int MostCyclesOfOneTime = 2000;
    private const int UsualCyclesOfOneTime = 400;

    private readonly long _firstCycle, _inputDelay;

    public VectorClock(Plan plan)
    {
        var inputDelay = _inputDelay = plan.InputDelay?.Nanoseconds ?? 0;
        if (plan.Cycle is { Nanoseconds: var own })
        {
            var phase = plan.Phase?.Nanoseconds ?? 0;
            (Period, HasOwnCycle) = (own, true);
            _firstCycle = phase + (inputDelay > phase ? (inputDelay - phase + own - 1) / own * own : 0);
        }
        else
        {
            Period = RatePeriod(plan) ?? CommonPeriod(plan);
            _firstCycle = inputDelay;
        }

        Uneven = [.. plan.Axes.Values.SelectMany(Times).Where(time => time % Period != 0).Distinct().Order()];
        if (plan.Gap is { Nanoseconds: var gap } && gap < Period)
        {
            throw new InputException(new Problem("gap", $"'{plan.Gap}' is shorter than a cycle of {Milliseconds(Period)}, so that every vector would be full of gaps",
                "give a gap of a cycle or more"));
        }
    }

    /// <summary>From sample to sample and from cycle to cycle, ns.</summary>
    public long Period { get; }

    /// <summary>Whether monitors run on a cycle of their own.</summary>
    public bool HasOwnCycle { get; }

    /// <summary>Whether a cycle comes only later than its sample, so that the last one needs another sample to exist.</summary>
    public bool IsLate => HasOwnCycle && _firstCycle > _inputDelay;

    /// <summary>The time of a sample, ns.</summary>
    public long Sample(int index) => index * Period;

    /// <summary>The time of a cycle, ns.</summary>
    public long Cycle(int index) => _firstCycle + index * Period;

    /// <summary>The time of a cycle as results state it, s.</summary>
    public decimal Seconds(int cycle) => Cycle(cycle) / 1_000_000_000m;

    /// <summary>The number of cycles after which a time has passed: the first n with n·T >= time.</summary>
    public int Cycles(Quantity? time) => time is null ? 0 : checked((int)((time.Nanoseconds + Period - 1) / Period));

    /// <summary>The times of the plan, ns, whose end no cycle falls on: they are reached at the first cycle after it.</summary>
    public IReadOnlyList<long> Uneven { get; }

    /// <summary>A time of a result for people.</summary>
    public static string Text(decimal seconds) => string.Create(CultureInfo.InvariantCulture, $"{seconds:0.#########} s");

    /// <summary>A time for people and plans, exact.</summary>
    public static string Milliseconds(long nanoseconds) => NumberText.Exact(new Fractions.Fraction(nanoseconds, 1_000_000)) + " ms";

    private static long? RatePeriod(Plan plan)
    {
        if (plan.Trace.Rate is not { } rate) return null;
        var period = Fractions.Fraction.One * 1_000_000_000 / rate.Exact;
        return period.Denominator.IsOne ? (long)period.Numerator : null;
    }

    /// <summary>A period that divides all times; where that would take too many cycles, one that divides as many of them as can be.</summary>
    private static long CommonPeriod(Plan plan)
    {
        var times = plan.Axes.Values.SelectMany(Times).Where(time => time > 0).ToList();
        if (times.Count == 0) return UsualPeriod;
        var all = Part(times.Aggregate(GreatestCommonDivisor), times, plan);
        if (all >= Math.Max(ShortestPeriod, times.Max() / MostCyclesOfOneTime)) return all;
        var floor = Math.Max(ShortestPeriod, times.Max() / UsualCyclesOfOneTime);
        var shared = times.SelectMany(a => times.Select(b => GreatestCommonDivisor(a, b))).Distinct().Select(common => Part(common, times, plan)).Where(period => period >= floor).Distinct();
        return shared.OrderByDescending(period => times.Count(time => time % period == 0)).ThenByDescending(period => period).Append(floor).First();
    }

    /// <summary>The largest part of a time that gives at least two cycles in the shortest time, so that one cycle less is still something.</summary>
    private static long Part(long common, List<long> times, Plan plan)
    {
        var parts = Math.Max((common + LongestPeriod - 1) / LongestPeriod, (2 * common + times.Min() - 1) / times.Min());
        if (plan.Gap is { } gap) parts = Math.Max(parts, (common + gap.Nanoseconds - 1) / gap.Nanoseconds);
        while (parts < common && common % parts != 0) parts++;
        return common / parts;
    }

    private static IEnumerable<long> Times(AxisPlan axis) =>
        axis.Monitors.Cast<object>().Append(axis.Stops).SelectMany(PlanQuantities.Of).Where(found => found.Kind == Kind.Time).Select(found => found.Quantity.Nanoseconds)
            .Concat(ChannelChecks.Of(axis).Select(channel => channel.Plan?.Second?.Time?.Nanoseconds ?? 0));

    private static long GreatestCommonDivisor(long a, long b) => b == 0 ? a : GreatestCommonDivisor(b, a % b);
}
