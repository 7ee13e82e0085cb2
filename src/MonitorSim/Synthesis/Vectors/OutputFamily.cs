using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>An output at one edge of its range: hysteresis, delays, and what ends it.</summary>
internal sealed class OutputFamily(Bench bench, string axis, MonitorPlan monitor, OutputEdge edge, Calling calling)
{
    private readonly int _delay = OutputDelays.Of(bench, monitor).Request, _on = OutputDelays.Of(bench, monitor).On, _off = OutputDelays.Of(bench, monitor).Off;

    /// <param name="harvest">Takes the vector.</param>
    /// <param name="ways">The same edge, called for in one way each; the best first.</param>
    public static void Make(Harvest harvest, IReadOnlyList<OutputFamily> ways)
    {
        if (ways[0].Unreachable is { } why) harvest.Miss(why, ways[0].Branches());
        else harvest.Try(ways[0].Branches(), ways.Select(way => (Func<Draft>)(() => way.MakeEdge().Meet(way.Branches()))));
    }

    private string? Unreachable => calling.Unreachable ?? edge.Unreachable;

    private IEnumerable<Branch> Branches()
    {
        yield return Of("on", "just without the hysteresis to spare");
        yield return Of("on", "just with the hysteresis to spare");
        yield return Of("off", "at the edge");
        yield return Of("off", "just past the edge");
        if (_on > 0) yield return Of("on delay", "one cycle less");
        if (_on > 0) yield return Of("on delay", "reached");
        if (_off > 0) yield return Of("off delay", "one cycle less");
        if (_off > 0) yield return Of("off delay", "reached");
        if (_delay > 0) yield return Of("delay", "one cycle less");
        if (calling.CanBeLost) yield return Of("request", "lost");
    }

    private Branch Of(string rule, string from) => new(axis, monitor.Name, edge.Name, null, rule, from);

    private Draft MakeEdge()
    {
        var script = bench.Begin(axis);
        var draft = new Draft($"{monitor.Name} {edge.Name}", (calling.CanBeLost ? "On within the edge, off as the request goes; then from" : "From") + " outside to just within the edge, where it comes on after its delay, back to the edge and one step past it, where it goes off after its delay.", script);
        if (calling.CanBeAbsent) calling.Leave(script);

        // Within the range unasked and while arming: the output stays off.
        script.Want(axis, edge.Kind, edge.AtInner);
        script.Run(1 + script.Axis(axis).Memory(edge.Kind) + script.Axis(axis).Order(edge.Kind));
        if (calling.CanBeAbsent) Is(draft, false);
        calling.Call(script);
        script.Run(Math.Max(0, _delay - (calling.CanBeAbsent ? 0 : script.Count)));
        if (_delay > 0) Is(draft, false);
        if (calling.CanBeLost) Lose(draft);
        Go(draft, edge.PastOuter, Math.Max(1, _off + 1), false);

        Go(draft, edge.PastInner, _on + 2, false);
        if (_on > 0)
        {
            Go(draft, edge.AtInner, _on, false);
            Go(draft, edge.PastInner, 1, false);
            Go(draft, edge.AtInner, _on, false);
        }

        Go(draft, edge.AtInner, 1, true);
        Go(draft, edge.AtOuter, _off + 2, true);
        if (_off > 0)
        {
            Go(draft, edge.PastOuter, _off, true);
            Go(draft, edge.AtOuter, 1, true);
            Go(draft, edge.PastOuter, _off, true);
        }

        Go(draft, edge.PastOuter, 1, false);
        return draft;
    }

    /// <summary>On, and off with the request. It comes before the edge is passed: what trips by that keeps its output however its request is.</summary>
    private void Lose(Draft draft)
    {
        Go(draft, edge.AtInner, _on + 1, true);
        calling.Leave(draft.Script);
        Go(draft, edge.AtInner, 1, false);
        calling.Call(draft.Script);
        draft.Script.Run(_delay);
        if (_delay > 0) Is(draft, false);
    }

    /// <summary>So many cycles at a value, after the last of which the output is on or off.</summary>
    private void Go(Draft draft, Target target, int cycles, bool on)
    {
        draft.Script.Want(axis, edge.Kind, target);
        draft.Script.Run(cycles);
        Is(draft, on);
    }

    private void Is(Draft draft, bool on) => draft.Outputs.Add((axis, monitor.Name, draft.Script.Count - 1, on));
}
