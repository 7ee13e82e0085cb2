using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What becomes of the axes of a group after a demand, if they stand from then on.</summary>
internal sealed class Aftermath(Bench bench, string axis)
{
    /// <summary>The axes that stop together with this one.</summary>
    public IReadOnlyList<string> Group { get; } = bench.GroupOf(axis);

    /// <summary>Lets all axes of the group stand.</summary>
    public void Stand(Script script)
    {
        foreach (var member in Group) script.Stand(member);
    }

    /// <summary>Cycles after which every stop of the group has ended, where its axis stands.</summary>
    public int Cycles => 3 + Group.Max(member => new[] { bench.Plan.Axes[member].Stops.Ss1, bench.Plan.Axes[member].Stops.Ss2 }.OfType<RampStopPlan>()
        .Select(stop => StopEnd.Cycles(bench, stop)).DefaultIfEmpty(0).Max() + BrakeOf(member) + (bench.Drive(member) is var drive && drive.Has(Kind.Velocity) ? drive.Memory(Kind.Velocity) : 0));

    /// <summary>The state of an axis at the cycle of a demand. A stop may end in the cycle in which it begins.</summary>
    public AxisState At(Script script, string member, Reaction reaction, int cycle) => reaction switch
    {
        Reaction.Stop0 => AxisState.TorqueOff,
        Reaction.Stop1 => EndsAtOnce(script, member, bench.Plan.Axes[member].Stops.Ss1!, cycle) && BrakeOf(member) == 0 ? AxisState.TorqueOff : AxisState.StoppingToOff,
        Reaction.Stop2 => EndsAtOnce(script, member, bench.Plan.Axes[member].Stops.Ss2!, cycle) ? AxisState.Holding : AxisState.StoppingToHold,
        _ => AxisState.Running,
    };

    /// <summary>The state that a demand ends in.</summary>
    public static AxisState EndOf(Reaction reaction) => reaction switch
    {
        Reaction.Stop0 or Reaction.Stop1 => AxisState.TorqueOff,
        Reaction.Stop2 => AxisState.Holding,
        _ => AxisState.Running,
    };

    private int BrakeOf(string member) => bench.Clock.Cycles(bench.Plan.Axes[member].Stops.Sbc?.Apply);

    private bool EndsAtOnce(Script script, string member, RampStopPlan stop, int cycle)
    {
        if (StopEnd.Cycles(bench, stop) > 0) return false;
        if (stop.Variant == StopVariant.Time) return true;
        var plan = bench.Plan.Axes[member];
        return script.Axis(member).Value(Kind.Velocity, cycle) is { } speed && speed.Abs() <= (plan.Standstill?.Exact ?? Fraction.Zero);
    }
}
