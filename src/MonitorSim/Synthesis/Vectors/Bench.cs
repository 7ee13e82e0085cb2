using Fractions;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What all vectors of a plan share: the plan as they use it, their clock, the settings of its signals, and values at which nothing trips.</summary>
internal sealed class Bench
{
    /// <summary>A vector that would take more is not made.</summary>
    public const int MostCycles = 20_000;

    private readonly Dictionary<string, Dictionary<Kind, Fraction>> _rest;
    private readonly Dictionary<string, IReadOnlyList<(Subject Subject, Lever Lever)>> _chains = new(StringComparer.Ordinal);

    /// <exception cref="InputException">The plan is wrong.</exception>
    public Bench(Plan plan)
    {
        PlanChecks.Require(plan);
        Plan = VectorPlan.Of(plan);
        Clock = new(Plan);
        Board = new(Plan);
        Requests = new(Plan, Board);
        _rest = Plan.Axes.ToDictionary(axis => axis.Key, axis => RestValues.Of(axis.Value));
    }

    /// <summary>The plan of all vectors, but for what they expect.</summary>
    public Plan Plan { get; }

    public VectorClock Clock { get; }

    public SignalBoard Board { get; }

    public Requests Requests { get; }

    /// <summary>Values of an axis's channels that no limit forbids, as far as there are any; SI.</summary>
    public IReadOnlyDictionary<Kind, Fraction> RestOf(string axis) => _rest[axis];

    /// <summary>Every chain of an axis that can trip.</summary>
    public IReadOnlyList<(Subject Subject, Lever Lever)> Chains(string axis)
    {
        if (!_chains.TryGetValue(axis, out var chains)) _chains[axis] = chains = [.. AxisChains.Of(this, axis)];
        return chains;
    }

    /// <summary>The axes that stop together with an axis, itself included; groups with a common member are one.</summary>
    public IReadOnlyList<string> GroupOf(string axis)
    {
        var group = new SortedSet<string>(StringComparer.Ordinal) { axis };
        for (var count = 0; count != group.Count;)
        {
            count = group.Count;
            foreach (var members in Plan.Groups.Values.Where(members => group.Overlaps(members)).ToList()) group.UnionWith(members);
        }

        return [.. group];
    }

    /// <summary>Begins a vector about an axis.</summary>
    public Script Begin(string axis) => new(this, axis);
}
