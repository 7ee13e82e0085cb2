using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Two recordings: upper limits of magnitudes use the larger one, lower limits the smaller one, the first one being at the limit.</summary>
internal sealed class SecondFamily(Bench bench, Subject subject, Lever lever, Kind kind, Fraction limit, bool upper)
{
    public void Make(Harvest harvest)
    {
        var branch = subject.Branch(lever, "second recording", upper ? "larger than the first" : "smaller than the first");
        if ((subject.Calling.Unreachable ?? lever.Unreachable) is { } why) harvest.Miss(why, branch);
        else harvest.Try([branch], MakeSecond);
    }

    private Draft MakeSecond()
    {
        var script = bench.Begin(subject.Axis);
        lever.Rest(script);
        subject.Calling.Call(script);
        script.Run(subject.Delay + 2);
        lever.Allow(script);
        script.Run(1);
        var trip = script.Count + subject.Filter;
        script.WantSecond(subject.Axis, kind, Target.Past(limit, upper));
        script.Run(subject.Filter + 1);
        script.WantSame(subject.Axis, kind);
        script.Run(2);
        return new Draft(subject.Title(lever, "second recording"), "The first recording is at the limit and the second one a step past it, for as long as the filter: it trips.", script)
            .Mean(subject.Axis, subject.Monitor, lever.Side, trip);
    }
}
