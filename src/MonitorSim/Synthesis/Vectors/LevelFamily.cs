using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>From one level of SLS to another: a stricter one takes force after the delay, a laxer one at once.</summary>
internal sealed class LevelFamily(Bench bench, string axis, Sls sls)
{
    private readonly int _delay = bench.Clock.Cycles(sls.Delay), _filter = bench.Clock.Cycles(sls.Filter);

    public void Make(Harvest harvest)
    {
        // Neighbours among the limits: from each to the next stricter one, and back.
        var levels = Enumerable.Range(0, sls.Levels!.Count).OrderBy(k => sls.Levels[k].Limit.Exact).ToList();
        for (var i = 0; i + 1 < levels.Count; i++)
        {
            var (strict, lax) = (levels[i], levels[i + 1]);
            if (sls.Levels[strict].Limit.Exact == sls.Levels[lax].Limit.Exact) continue;
            List<Branch> stricter = [Of(strict, $"after level {lax}", "in force after the delay")];
            if (_delay > 0) stricter.Add(Of(lax, $"before level {strict}", "in force one cycle less than the delay"));
            Branch[] laxer = [Of(lax, $"after level {strict}", "in force at once")];
            var (callStrict, callLax) = (Calling(strict), Calling(lax));
            if ((callStrict.Unreachable ?? callLax.Unreachable) is { } why)
            {
                harvest.Miss(why, [.. stricter, .. laxer]);
                continue;
            }

            harvest.Try(stricter, () => MakeStricter(strict, lax, callStrict, callLax));
            harvest.Try(laxer, () => MakeLaxer(strict, lax, callStrict, callLax));
        }
    }

    private Branch Of(int level, string rule, string from) => new(axis, sls.Name, "upper", level, rule, from);

    private SignalCalling Calling(int level) => new(bench.Requests.Of(sls, level));

    private SlsLever Lever(int level) => new(bench, axis, sls.Levels![level].Limit.Exact, sls.Signed, negative: false, sls.Approach) { Level = level };

    /// <summary>Above the stricter limit from before it is asked for until it trips.</summary>
    private Draft MakeStricter(int strict, int lax, SignalCalling callStrict, SignalCalling callLax)
    {
        var lever = Lever(strict);
        var script = Watching(lever, callLax);
        Fall(script, strict, lax, _delay);
        script.Run(1);
        callStrict.Call(script);
        for (var left = _delay - 1; left >= 0; left--)
        {
            Fall(script, strict, lax, left);
            script.Run(1);
        }

        var trip = script.Count + _filter;
        lever.Exceed(script);
        script.Run(_filter + 1);
        lever.Allow(script);
        script.Run(2);
        return Draft($"to level {strict}", "A stricter level is asked for while the speed is one step above it: the laxer one stays in force for the delay, then the stricter one trips.", script, trip);
    }

    /// <summary>Above the stricter limit from the cycle on at which the laxer one is asked for; then above that one too.</summary>
    private Draft MakeLaxer(int strict, int lax, SignalCalling callStrict, SignalCalling callLax)
    {
        var (below, above) = (Lever(strict), Lever(lax));
        var script = Watching(below, callStrict);
        below.Allow(script);
        script.Run(2);
        callLax.Call(script);
        below.Exceed(script);
        script.Run(_filter + 2);
        var trip = script.Count + _filter;
        above.Exceed(script);
        script.Run(_filter + 1);
        above.Allow(script);
        script.Run(2);
        return Draft($"to level {lax}", "A laxer level is asked for and is in force at once: above the stricter limit nothing trips any more, above the laxer one it does.", script, trip);
    }

    /// <summary>Above the stricter limit, so many cycles before it takes force. Where an approach is watched, the speed falls from the laxer limit.</summary>
    private void Fall(Script script, int strict, int lax, int left)
    {
        var (low, high) = (sls.Levels![strict].Limit.Exact, sls.Levels[lax].Limit.Exact);
        if (sls.Approach is not { } approach)
        {
            Lever(strict).Exceed(script);
            return;
        }

        if (approach.Deceleration.Exact * _delay * bench.Clock.Period / 1_000_000_000 - (high - low) > approach.Tolerance.Exact)
            throw new VectorException("above the stricter limit until it is in force, the speed would leave the ramp towards it: the approach trips first");
        script.Want(axis, Kind.Velocity, left == 0 ? Target.Past(low, upper: true) : new(low + (high - low) * left / (_delay + 1)));
    }

    private Script Watching(SlsLever lever, SignalCalling calling)
    {
        var script = bench.Begin(axis);
        lever.Rest(script);
        calling.Call(script);
        script.Run(_delay + 1 + lever.Order + lever.Memory);
        return script;
    }

    private Draft Draft(string name, string says, Script script, int trip) =>
        new Draft($"{sls.Name} {name}", says, script).Mean(axis, sls.Name, "upper", trip);
}
