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
    /// <summary>The share of the pace that is left for the step past the limit.</summary>
    private static readonly Fraction LastStep = new(9, 10);

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

    /// <summary>How far it may move in a cycle, SI; null: any way.</summary>
    public Fraction? Pace { get; init; }

    public override void Allow(Script script)
    {
        Approach(script);
        script.Want(axis, Kind.Position, Target.At(End(script), !negative));
    }

    public override void Approach(Script script)
    {
        if (Pace is not { } pace) return;
        var end = End(script);
        for (var here = script.Now(axis, Kind.Position); (end - here).Abs() > pace * LastStep; here = script.Now(axis, Kind.Position))
        {
            var step = (end - here).Abs() < pace ? (end - here).Abs() : pace;
            var next = Target.At(end > here ? here + step : here - step, upper: end > here);

            // Where a step of the grid is faster than that, it goes at once, whatever comes of it.
            if (script.Axis(axis).Snap(Kind.Position, next) == here) return;
            script.Want(axis, Kind.Position, next);
            script.Run(1);
        }
    }

    public override void Exceed(Script script) => script.Want(axis, Kind.Position, Target.Past(End(script), !negative));

    public override void Anchor(Script script) => _reference = script.Now(axis, Kind.Position);

    public override bool IsPast(Script script, int cycle, int reference) =>
        script.Axis(axis).Value(Kind.Position, cycle) is { } here && script.Axis(axis).Value(Kind.Position, reference) is { } start && (here - start).Abs() > window;

    protected Fraction Reference(Script script) => _reference ??= script.Axis(axis).Snap(Kind.Position, new(script.Now(axis, Kind.Position)));

    private Fraction End(Script script) => negative ? Reference(script) - window : Reference(script) + window;
}
