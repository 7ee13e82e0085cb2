using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The same, while all other axes of the group stand from the cycle on at which it is called for: they stop as well, and what they compare is kept.</summary>
internal sealed class StandingCalling(Bench bench, string axis, Calling inner) : Calling
{
    public override string? Unreachable => inner.Unreachable;

    public override bool CanBeAbsent => inner.CanBeAbsent;

    public override bool CanBeLost => inner.CanBeLost;

    public override (string Axis, string Monitor)? By => inner.By;

    public override Kind? Moves(string moved) => inner.Moves(moved);

    public override Target? Calls(string called, Fraction speed, Kind root) => inner.Calls(called, speed, root);

    public override void Leave(Script script) => inner.Leave(script);

    public override int Call(Script script)
    {
        var cycle = inner.Call(script);
        var calling = By?.Axis;
        foreach (var member in bench.GroupOf(axis))
        {
            if (member == axis) continue;
            if (member != calling) script.Stand(member);
            else script.Afterwards(() => script.Stand(member));
        }

        return cycle;
    }
}
