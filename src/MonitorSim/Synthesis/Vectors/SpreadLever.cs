using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The difference of two recordings of a channel against its tolerance.</summary>
internal sealed class SpreadLever(Bench bench, string axis, Kind kind, Fraction tolerance, bool negative) : Lever
{
    public override string Side => "upper";

    public override string Axis => axis;

    public override string? Unreachable => kind == Kind.Position && bench.Plan.Axes[axis].Modulo is { } modulo && 2 * tolerance >= modulo.Exact
        ? "two positions are never more than half a turn apart" : null;

    public override void Rest(Script script) => script.WantSame(axis, kind);

    public override void Allow(Script script) => script.WantSpread(axis, kind, Target.At(Spread, !negative));

    public override void Exceed(Script script) => script.WantSpread(axis, kind, Target.Past(Spread, !negative));

    private Fraction Spread => negative ? -tolerance : tolerance;
}
