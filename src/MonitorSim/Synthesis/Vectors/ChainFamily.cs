namespace MonitorSim.Synthesis.Vectors;

/// <summary>Request, delay, limit and filter of one side: allowed all the way, tripping as early as may be, and asked for again.</summary>
internal sealed class ChainFamily(Bench bench, Subject subject, Lever lever)
{
    private readonly Calling _calling = subject.Calling;
    private readonly int _delay = subject.Delay, _filter = subject.Filter;

    /// <summary>One vector each for what is allowed, for the first trip, and for the request that comes again.</summary>
    /// <param name="harvest">Takes them.</param>
    /// <param name="ways">The same chain, called for in one way each; the best first.</param>
    public static void Make(Harvest harvest, params IReadOnlyList<ChainFamily> ways)
    {
        var best = ways[0];
        if (best.Unreachable is { } why)
        {
            harvest.Miss(why, best.Allowed().Concat(best.Tripping()).Concat(best.Restarted()));
            return;
        }

        if (best._delay > 0 && !best.CanExceedUnheard)
            harvest.Miss(best.HeardWhileArming ?? "the measure has no value yet while it arms, and it is asked for from the first cycle on", best.Of("delay", "one cycle less"));
        harvest.Try(best.Allowed(), ways.Select(way => (Func<Draft>)(() => way.MakeAllowed().Meet(way.Allowed()))));
        harvest.Try(best.Tripping(), ways.Select(way => (Func<Draft>)(() => way.MakeTripping().Meet(way.Tripping()))));
        harvest.Try(best.Restarted(), ways.Where(way => way.Restarted().Any()).Select(way => (Func<Draft>)(() => way.MakeRestarted().Meet(way.Restarted()))));
    }

    private string? Unreachable => subject.Unreachable(lever);

    private bool CanExceedUnheard => HeardWhileArming is null && (_calling.CanBeAbsent || lever.Order < _delay);

    private string? HeardWhileArming => lever.HeardWhileArming;

    /// <summary>Whether two runs of all but the filter fit, with a cycle at the limit around each.</summary>
    private int ShortRuns => _filter == 0 ? 0 : lever.Room >= 2 * _filter + 5 ? 2 : lever.Room >= _filter + 3 ? 1 : 0;

    private IEnumerable<Branch> Allowed()
    {
        yield return Of("limit", "just allowed");
        if (_filter > 0 && ShortRuns > 0) yield return Of("filter", "one cycle less");
        if (_filter > 0 && ShortRuns > 1) yield return Of("filter", "interrupted");
        if (_delay > 0 && CanExceedUnheard) yield return Of("delay", "one cycle less");
        if (_calling.CanBeAbsent) yield return Of("request", "absent");
    }

    private IEnumerable<Branch> Tripping()
    {
        yield return Of("limit", "just past");
        if (_filter > 0) yield return Of("filter", "reached");
        if (lever.HasReference) yield return Of("reference", "first watching cycle");
    }

    private IEnumerable<Branch> Restarted()
    {
        if (_delay > 0 && !lever.HasReference) yield return Of("delay", "reached");
        if (!_calling.CanBeLost) yield break;
        yield return Of("request", "lost");
        if (lever.HasReference) yield return Of("reference", "forgotten with the request");
    }

    private Branch Of(string rule, string from) => subject.Branch(lever, rule, from);

    /// <summary>Past the limit unasked and while arming, at the limit, past it for less than the filter: nothing trips.</summary>
    private Draft MakeAllowed()
    {
        var script = Begin();
        if (_calling.CanBeAbsent)
        {
            _calling.Leave(script);
            lever.ExceedUnheard(script, _delay);
            script.Run(2 + lever.Order + (lever.HasReference ? lever.Memory : 0));
        }

        var begin = subject.Call(script, lever);
        Arm(script, begin, unheard: CanExceedUnheard);
        ReachComparing(script);
        lever.Allow(script);
        script.Run(1);
        for (var run = 0; run < ShortRuns; run++)
        {
            lever.Exceed(script);
            script.Run(_filter);
            lever.Allow(script);
            script.Run(1);
        }

        script.Run(Math.Max(0, Math.Min(_filter, lever.Room - ShortRuns * (_filter + 1) - 3)));
        return Draft("allowed", AllowedStory() + ": nothing trips.", script, begin);
    }

    private string AllowedStory()
    {
        var unheard = (_calling.CanBeAbsent, _delay > 0 && CanExceedUnheard) switch
        {
            (true, true) => "Past the limit while it is not asked for and while it arms, then at the limit",
            (true, false) => "Past the limit while it is not asked for, then at the limit",
            (false, true) => "Past the limit while it arms, then at the limit",
            _ => "At the limit",
        };
        return unheard + ShortRuns switch { 0 => "", 1 => ", then past it for one cycle less than the filter", _ => ", then past it twice for one cycle less than the filter, with a cycle at the limit between" };
    }

    /// <summary>Past the limit for just long enough.</summary>
    private Draft MakeTripping()
    {
        var script = Begin();
        lever.Rest(script);
        if (_calling.CanBeAbsent)
        {
            _calling.Leave(script);
            script.Run(1);
        }

        var begin = subject.Call(script, lever);
        Arm(script, begin, unheard: false);
        ReachComparing(script);
        if (!lever.HasReference && _filter == 0 && lever.LeadIn == 0) script.Run(1);
        lever.Approach(script);
        var from = script.Count;
        lever.Exceed(script);
        script.Run(_filter + 1);
        lever.Allow(script);
        script.Run(2);
        return Draft("trips", _filter == 0
            ? "Past the limit by one step for one cycle: it trips at that cycle."
            : "Past the limit by one step for exactly as long as the filter: it trips at the last of these cycles.", script, begin, from + _filter);
    }

    /// <summary>Past the limit from before the request on; the request goes at the cycle that would trip, and comes again.</summary>
    private Draft MakeRestarted()
    {
        var script = Begin();
        if (_calling.CanBeAbsent)
        {
            _calling.Leave(script);
            lever.ExceedUnheard(script, _delay);
            script.Run(1 + lever.Order + (lever.HasReference ? lever.Memory : 0));
        }
        else if (lever.Order > _delay)
        {
            throw new VectorException("the measure has no value yet when watching begins");
        }

        if (lever.HasReference) return MakeReferenceForgotten(script);
        int begin;
        if (_calling.CanBeLost)
        {
            Lose(script);
            begin = _calling.Call(script);
        }
        else
        {
            begin = subject.Call(script, lever);
        }

        Arm(script, begin, unheard: true);
        var from = script.Count;
        Exceed(script, _filter + 1);
        lever.Allow(script);
        script.Run(2);
        return _calling.CanBeLost
            ? Draft("restarted", "Past the limit throughout; the request goes at the very cycle that would trip and comes again: delay and filter count anew.", script, begin, from + _filter)
            : Draft("delay", "Past the limit from the beginning: it trips as soon as the delay and the filter have passed.", script, begin, from + _filter);
    }

    /// <summary>Past the limit up to the cycle that would trip; at that cycle the request is gone.</summary>
    private void Lose(Script script)
    {
        var begin = _calling.Call(script);
        if (_delay + _filter == 0)
        {
            lever.Rest(script);
            script.Run(1);
        }

        Arm(script, begin, unheard: true);
        Exceed(script, _filter);
        _calling.Leave(script);
        Exceed(script, 1);
    }

    private Draft MakeReferenceForgotten(Script script)
    {
        var begin = subject.Call(script, lever);
        Arm(script, begin, unheard: false);
        ReachComparing(script);
        lever.Approach(script);
        Exceed(script, _filter);
        _calling.Leave(script);
        Exceed(script, 1);
        _calling.Call(script);
        script.Run(_delay);

        // Here it stands now: from here it is measured.
        lever.Anchor(script);
        ReachComparing(script);
        if (lever.Room > _filter + 2)
        {
            lever.Allow(script);
            script.Run(1);
        }

        var from = script.Count;
        Exceed(script, _filter + 1);
        lever.Allow(script);
        script.Run(2);
        return Draft("restarted", "The request goes at the very cycle that would trip and comes again: the new reference is where the axis stands by then.", script, begin, from + _filter);
    }

    private Script Begin()
    {
        var script = bench.Begin(subject.Axis);
        lever.Prepare(script, 4 * (_delay + _filter) + 2 * lever.LeadIn + 40);
        return script;
    }

    private void Exceed(Script script, int cycles)
    {
        lever.Exceed(script);
        script.Run(cycles);
    }

    /// <summary>The cycles of the delay, the request being there.</summary>
    private void Arm(Script script, int begin, bool unheard)
    {
        while (script.Count < begin + _delay)
        {
            if (unheard) lever.ExceedUnheard(script, begin + _delay - 1 - script.Count);
            else lever.Rest(script);
            script.Run(1);
        }
    }

    /// <summary>Up to the first cycle at which the side is compared with something to measure from.</summary>
    private void ReachComparing(Script script)
    {
        if (!lever.HasReference && lever.LeadIn == 0)
        {
            // A rate needs samples before it shows anything.
            if (script.Count > lever.Order) return;
            lever.Rest(script);
            script.Run(1 + lever.Order - script.Count);
            return;
        }

        lever.Rest(script);
        script.Run(lever.LeadIn + 1);
    }

    private Draft Draft(string name, string says, Script script, int begin, params int[] trips) => subject.Draft(lever, name, says, script, begin, trips);
}
