using Fractions;
using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The ramp towards a limit to come, while SLS arms.</summary>
internal sealed class ApproachFamily(Bench bench, Subject subject, Fraction limit, int? level, Approach approach)
{
    private Fraction Fall => approach.Deceleration.Exact * bench.Clock.Period / 1_000_000_000;

    public void Make(Harvest harvest)
    {
        var branches = new[] { Of("limit", "just allowed"), Of("limit", "just past"), Of("limit to come", "not compared at it") };
        var why = subject.Calling.Unreachable
            ?? (!subject.Calling.CanBeAbsent ? "it is asked for from the first cycle on: there is no speed at which the ramp could begin" : null)
            ?? (limit < Fraction.Zero ? "a limit below 0 has no ramp towards it" : null)
            ?? (subject.Delay < subject.Filter + 4 ? "the delay is too short for a ramp and the filter" : null);
        if (why is not null)
        {
            harvest.Miss(why, branches);
            return;
        }

        harvest.Try([branches[0]], MakeAllowed);
        harvest.Try([branches[1]], MakePast);
        if ((subject.Delay - 1) * Fall > approach.Tolerance.Exact) harvest.Try([branches[2]], MakeNotCompared);
        else harvest.Miss("the ramp does not fall below the limit and the tolerance while it arms", branches[2]);
    }

    private Branch Of(string rule, string from) => new(subject.Axis, subject.Monitor, "approach", level, rule, from);

    private Draft MakeAllowed()
    {
        var (script, speed) = Asked(limit + subject.Delay * Fall);
        for (var i = 1; i < subject.Delay; i++) Go(script, Target.At(speed - i * Fall + approach.Tolerance.Exact, upper: true));
        Go(script, Target.At(limit, upper: true), 2);
        return Draft("approach allowed", "While it arms the speed is exactly at the ramp with its tolerance, and then at the limit: nothing trips.", script);
    }

    private Draft MakePast()
    {
        var (script, speed) = Asked(limit + subject.Delay * Fall);
        var from = script.Count + 1;
        Go(script, Target.At(speed - Fall + approach.Tolerance.Exact, upper: true));
        for (var i = 2; i <= subject.Filter + 2; i++) Go(script, Target.Past(speed - i * Fall + approach.Tolerance.Exact, upper: true));
        Go(script, Target.At(limit, upper: true), 2);
        return Draft("approach trips", "While it arms the speed is one step above the ramp and its tolerance for as long as the filter: it trips.", script, from + subject.Filter);
    }

    private Draft MakeNotCompared()
    {
        var (script, _) = Asked(limit);
        Go(script, Target.At(limit, upper: true), subject.Delay + 2);
        return Draft("approach at the limit", "While it arms the speed is at the limit to come, and the ramp goes on below it: nothing trips.", script);
    }

    /// <summary>The first cycle of the request, at a speed.</summary>
    private (Script Script, Fraction Speed) Asked(Fraction speed)
    {
        var script = bench.Begin(subject.Axis);
        subject.Calling.Leave(script);
        Go(script, new(speed), 2 + script.Axis(subject.Axis).Memory(Kind.Velocity));
        subject.Calling.Call(script);
        Go(script, new(speed));
        return (script, script.Now(subject.Axis, Kind.Velocity));
    }

    private void Go(Script script, Target target, int cycles = 1)
    {
        script.Want(subject.Axis, Kind.Velocity, target);
        script.Run(cycles);
    }

    private Draft Draft(string name, string says, Script script, params int[] trips) =>
        new Draft($"{subject.Monitor} {name}{(level is { } k ? FormattableString.Invariant($" level {k}") : "")}", says, script).Mean(subject.Axis, subject.Monitor, "approach", trips);
}
