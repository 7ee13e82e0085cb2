using Fractions;
using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>From where SDI measures: the furthest position reached while watching, or the position at the first watching cycle.</summary>
internal sealed class SdiFamily(Bench bench, Subject subject, Sdi sdi)
{
    public void Make(Harvest harvest)
    {
        Branch branch = new(subject.Axis, subject.Monitor, "upper", null, "reference", sdi.Reference == DirectionReference.Furthest ? "moves on with the permitted direction" : "stays where watching began");
        var turn = bench.Plan.Axes[subject.Axis].Modulo is { } modulo && 6 * sdi.Tolerance.Exact >= modulo.Exact
            ? "moving back by three times the tolerance would be more than half a turn, which reads as a step the other way" : null;
        if ((subject.Calling.Unreachable ?? turn) is { } why) harvest.Miss(why, branch);
        else harvest.Try([branch], MakeMoved);
    }

    /// <summary>On by twice the tolerance in the permitted direction, then back to the tolerance from the reference, then past it.</summary>
    private Draft MakeMoved()
    {
        var script = bench.Begin(subject.Axis);
        var back = sdi.Allow == Direction.Positive ? -1 : 1;
        script.Run(1);

        // It stands until then, whatever its limits say of its speed.
        var start = script.Now(subject.Axis, Kind.Position);
        Go(script, new(start));
        subject.Calling.Call(script);
        script.Run(subject.Delay + 2);
        Go(script, new(start - back * 2 * sdi.Tolerance.Exact));
        var reference = sdi.Reference == DirectionReference.Furthest ? script.Now(subject.Axis, Kind.Position) : start;
        var end = reference + back * sdi.Tolerance.Exact;
        Go(script, Target.At(end, upper: back > 0), subject.Filter + 2);
        var trip = script.Count + subject.Filter;
        Go(script, Target.Past(end, upper: back > 0), subject.Filter + 1);
        Go(script, Target.At(end, upper: back > 0), 2);
        return new Draft($"{subject.Monitor} reference", "On in the permitted direction, back to the tolerance and one step past it, measured from where the plan says.", script)
            .Mean(subject.Axis, subject.Monitor, "upper", trip);
    }

    private void Go(Script script, Target target, int cycles = 1)
    {
        script.Want(subject.Axis, Kind.Position, target);
        script.Run(cycles);
    }
}
