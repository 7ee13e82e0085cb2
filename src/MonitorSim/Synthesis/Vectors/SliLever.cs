using Fractions;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The increment of SLI while the move may last, or the window after it.</summary>
/// <param name="bench">The plan.</param>
/// <param name="axis">The axis.</param>
/// <param name="side"><c>increment</c> or <c>window</c>.</param>
/// <param name="window">How far it may move, SI.</param>
/// <param name="moveCycles">Cycles of the move; null: without end.</param>
/// <param name="negative">Whether it moves towards falling positions.</param>
internal sealed class SliLever(Bench bench, string axis, string side, Fraction window, int? moveCycles, bool negative) : TravelLever(bench, axis, side, window, negative)
{
    public override int LeadIn => Side == "window" ? moveCycles!.Value : 0;

    public override int Room => Side == "window" ? int.MaxValue : moveCycles ?? int.MaxValue;
}
