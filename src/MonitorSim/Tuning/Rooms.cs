namespace MonitorSim.Tuning;

/// <summary>Gives every tuned limit its room.</summary>
public static class Rooms
{
    /// <summary>The result with the room of every limit.</summary>
    /// <param name="result">What recordings say.</param>
    /// <param name="need">What production is taken to need.</param>
    /// <param name="hazard">What the hazard allows; null: from above nothing is known.</param>
    public static TuneResult Of(TuneResult result, Need need, Hazard? hazard = null) => OfEach(result, need, hazard is null ? [] : [hazard]);

    /// <summary>The result with the room of every limit, where hazards differ from limit to limit.</summary>
    /// <param name="result">What recordings say.</param>
    /// <param name="need">What production is taken to need.</param>
    /// <param name="hazards">What the hazard allows; the first that concerns a limit counts.</param>
    public static TuneResult OfEach(TuneResult result, Need need, IReadOnlyList<Hazard> hazards)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(need);
        return result with { Monitors = [.. result.Monitors.Select(limit => limit with { Room = Of(result, limit, need, hazards.FirstOrDefault(hazard => hazard.Concerns(limit))) })] };
    }

    private static Room Of(TuneResult result, TunedLimit limit, Need need, Hazard? hazard)
    {
        var room = new Room { From = need.Of(limit), Basis = need.Basis, Margin = need.MarginOf(limit) };
        if (hazard is null) return room;
        var chain = new StoppingChain
        {
            Limit = Math.Max(0, limit.Limit),
            Filter = (double)limit.Filter,
            Cycle = (double)result.LongestCycle,
            InputDelay = (double)result.Plan.InputDelay,
            ReactionDelay = (double)result.Plan.ReactionDelay,
            FaultAcceleration = hazard.FaultAcceleration,
            Stopping = hazard.Stopping,
        };
        var (to, decidedBy) = hazard.Allows(chain);
        return room with
        {
            To = to is { } finite && double.IsFinite(finite) ? finite : null,
            DecidedBy = decidedBy,
            Chain = chain,
            SeparationDistance = hazard.ApproachSpeed > 0 ? chain.SeparationDistance(hazard.ApproachSpeed, hazard.Intrusion) : null,
            Energy = hazard.Inertia is { } inertia ? chain.Energy(inertia) : null,
            Levers = room.From is null || decidedBy is null ? [] : new LeverSearch(limit, need, hazard, chain).All(),
        };
    }
}
