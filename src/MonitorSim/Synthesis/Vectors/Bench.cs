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
    private readonly Dictionary<(string Axis, bool Negative), IReadOnlyList<(Subject Subject, Lever Lever)>> _chains = [];

    private readonly Dictionary<string, AxisDrive> _drives = new(StringComparer.Ordinal);

    /// <exception cref="InputException">The plan is wrong.</exception>
    public Bench(Plan plan)
    {
        PlanChecks.Require(plan);
        Plan = VectorPlan.Of(plan);
        Clock = new(Plan);
        Board = new(Plan);
        Requests = new(this);
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
    /// <param name="axis">The axis.</param>
    /// <param name="negative">Those of magnitudes only, met by negative values.</param>
    public IReadOnlyList<(Subject Subject, Lever Lever)> Chains(string axis, bool negative = false)
    {
        if (!_chains.TryGetValue((axis, negative), out var chains)) _chains[(axis, negative)] = chains = [.. AxisChains.Of(this, axis, negative)];
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

    /// <summary>What an axis's channels come from, and what they need; for questions that do not depend on what is written.</summary>
    public AxisDrive Drive(string axis)
    {
        if (!_drives.TryGetValue(axis, out var drive)) _drives[axis] = drive = Begin(axis).Axis(axis);
        return drive;
    }

    /// <summary>The recorded quantity that a channel comes from; null where there is no such channel.</summary>
    public Kind? RootOf(string axis, Kind kind) => Drive(axis).Has(kind) ? Drive(axis).Root(kind) : null;

    /// <summary>Begins a vector about an axis.</summary>
    public Script Begin(string axis) => new(this, axis);
}
