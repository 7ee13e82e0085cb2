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

    public override void Rest(Script script) => script.WantSecond(axis, kind, null);

    public override void Allow(Script script) => script.WantSecond(axis, kind, Target.At(End(script), !negative));

    public override void Exceed(Script script) => script.WantSecond(axis, kind, Target.Past(End(script), !negative));

    private Fraction End(Script script) => negative ? script.Now(axis, kind) - tolerance : script.Now(axis, kind) + tolerance;
}
