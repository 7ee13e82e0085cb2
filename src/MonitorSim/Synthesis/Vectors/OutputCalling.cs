using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>By an output that comes on: its channel is led from outside its range to just within.</summary>
/// <param name="bench">The plan.</param>
/// <param name="axis">The axis.</param>
/// <param name="monitor">SCA, SSM or SMT.</param>
/// <param name="edge">The edge of its range that is passed.</param>
internal sealed class OutputCalling(Bench bench, string axis, MonitorPlan monitor, OutputEdge edge) : Calling
{
    private readonly SignalCalling _calling = new(bench.Requests.Of(monitor));
    private readonly OutputDelays _delays = OutputDelays.Of(bench, monitor);

    public override string? Unreachable => _calling.Unreachable ?? edge.Unreachable;

    public override bool CanBeAbsent => true;

    public override bool CanBeLost => false;

    // It stays on where it is.
    public override void Leave(Script script) { }

    public override int Call(Script script)
    {
        script.Want(axis, edge.Kind, edge.PastOuter);
        _calling.Call(script);
        script.Run(1 + _delays.Request + _delays.Off + script.Axis(axis).Memory(edge.Kind) + script.Axis(axis).Order(edge.Kind));
        script.Want(axis, edge.Kind, edge.AtInner);
        script.Run(_delays.On);
        return script.Count;
    }
}
