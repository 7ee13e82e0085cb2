namespace MonitorSim.Tuning;

/// <summary>What the hazard allows of a speed limit: the worst fault, how the axis stops, and how far, how late or how hard it may still come. SI.</summary>
public sealed record Hazard
{
    /// <summary>The SI unit of the speed limits that it concerns: <c>m/s</c> or <c>rad/s</c>.</summary>
    public required string Unit { get; init; }
    /// <summary>How the axis stops in the worst case.</summary>
    public required IStopping Stopping { get; init; }
    /// <summary>What the worst fault accelerates with until the drive acts, m/s² or rad/s², >= 0.</summary>
    public double FaultAcceleration { get; init; }
    /// <summary>How far the axis may move from passing the limit to standstill, m or rad; null: as far as it comes.</summary>
    public double? Overrun { get; init; }
    /// <summary>How far the safeguard is from the danger zone, m; null: not asked. S = K·T + C (ISO 13855) has to stay within it.</summary>
    public double? Distance { get; init; }
    /// <summary>K, m/s.</summary>
    public double ApproachSpeed { get; init; }
    /// <summary>C, m.</summary>
    public double Intrusion { get; init; }
    /// <summary>The kinetic energy allowed at the peak of the speed, J; null: not asked.</summary>
    public double? Energy { get; init; }
    /// <summary>What moves: mass, kg, or moment of inertia, kg·m²; null: not known, so that no energy can be told.</summary>
    public double? Inertia { get; init; }
    /// <summary>The axis that it concerns, or <c>axis.monitor</c>; null: every speed limit of its unit.</summary>
    public string? For { get; init; }

    /// <summary>Whether it concerns a limit: an upper limit of a speed whose trip stops the axis.</summary>
    /// <param name="limit">The limit.</param>
    public bool Concerns(TunedLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return limit is { Function: "SLS" or "SSR", Side: "upper" } && limit.Unit == Unit && limit.Reaction != Plans.Reaction.None
            && (For is null || For == limit.Axis || For == $"{limit.Axis}.{limit.Monitor}");
    }

    /// <summary>The largest limit that it allows, and which of its conditions decides: <c>overrun</c>, <c>separation distance</c> or <c>energy</c>. Null
    /// where not even a limit of 0 is allowed.</summary>
    /// <param name="chain">The chain; its limit does not matter.</param>
    public (double? Limit, string? DecidedBy) Allows(StoppingChain chain)
    {
        ArgumentNullException.ThrowIfNull(chain);
        (double? Limit, string? DecidedBy) least = (double.PositiveInfinity, null);
        foreach (var (name, figure, allowed) in Conditions())
        {
            if (chain.LargestLimit(figure, allowed) is not { } limit) return (null, name);
            if (limit < least.Limit) least = (limit, name);
        }

        return least;
    }

    private IEnumerable<(string Name, Func<StoppingChain, double> Figure, double Allowed)> Conditions()
    {
        if (Overrun is { } overrun) yield return ("overrun", chain => chain.Travel, overrun);
        if (Distance is { } distance) yield return ("separation distance", chain => chain.SeparationDistance(ApproachSpeed, Intrusion), distance);
        if (Energy is { } energy && Inertia is { } inertia) yield return ("energy", chain => chain.Energy(inertia), energy);
    }
}
