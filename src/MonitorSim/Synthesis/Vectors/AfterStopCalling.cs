using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>SOS as what comes after SS2: once that has begun the axis stands until it ends, and for one cycle more.</summary>
internal sealed class AfterStopCalling(Bench bench, string axis, Calling stop, RampStopPlan plan) : Calling
{
    public override bool CanBeAbsent => true;

    public override bool CanBeLost => false;

    public override (string Axis, string Monitor)? By => stop.By;

    public override Kind? Moves(string moved) => stop.Moves(moved);

    public override void Leave(Script script) => stop.Leave(script);

    public override int Call(Script script)
    {
        script.Stand(axis);
        var begin = stop.Call(script);
        int? since = null;
        for (var cycle = begin; ; cycle++)
        {
            while (script.Count <= cycle) script.Run(1);
            script.Stand(axis);
            if (plan.Variant == StopVariant.Time) since = begin;
            else if (!IsStanding(script, cycle)) since = null;
            else since ??= cycle;
            if (cycle - since >= StopEnd.Cycles(bench, plan)) return cycle;
        }
    }

    private bool IsStanding(Script script, int cycle) => script.Axis(axis).Value(Kind.Velocity, cycle) is { } speed && speed.Abs() <= (bench.Plan.Axes[axis].Standstill?.Exact ?? Fraction.Zero);
}
