using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The way from where watching began against a window, an increment or a tolerance.</summary>
/// <param name="bench">The plan.</param>
/// <param name="axis">The axis.</param>
/// <param name="side">The limit side.</param>
/// <param name="window">How far it may move, SI.</param>
/// <param name="negative">Whether it moves towards falling positions.</param>
internal class TravelLever(Bench bench, string axis, string side, Fraction window, bool negative) : Lever
{
    private Fraction? _reference;

    protected Bench Bench => bench;
    protected Fraction Window => window;

    public override string Side => side;

    public override string Axis => axis;

    public override Kind? Moves => Kind.Position;

    public override bool HasReference => true;

    public override string? Unreachable => bench.Plan.Axes[axis].Modulo is { } modulo && 2 * window >= modulo.Exact
        ? "a step past it would be more than half a turn, which reads as a step the other way" : null;

    public override void Prepare(Script script, int cycles) => _reference = null;

    public override void Rest(Script script) => script.Want(axis, Kind.Position, new(Reference(script)));

    public override void Allow(Script script) => script.Want(axis, Kind.Position, Target.At(End(script), !negative));

    public override void Exceed(Script script) => script.Want(axis, Kind.Position, Target.Past(End(script), !negative));

    public override void Anchor(Script script) => _reference = script.Now(axis, Kind.Position);

    public override bool IsPast(Script script, int cycle, int reference) =>
        script.Axis(axis).Value(Kind.Position, cycle) is { } here && script.Axis(axis).Value(Kind.Position, reference) is { } start && (here - start).Abs() > window;

    private Fraction Reference(Script script) => _reference ??= script.Axis(axis).Snap(Kind.Position, script.Now(axis, Kind.Position));

    private Fraction End(Script script) => negative ? Reference(script) - window : Reference(script) + window;
}
