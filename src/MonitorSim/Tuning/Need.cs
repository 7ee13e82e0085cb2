namespace MonitorSim.Tuning;

/// <summary>What production is taken to need of a limit.</summary>
public enum NeedBasis
{
    /// <summary>The critical limit of the recordings: what they needed.</summary>
    Critical,
    /// <summary>The distribution-free bound for the next run; only with enough runs.</summary>
    DistributionFree,
    /// <summary>The normal tolerance limit for the next run; only with two runs or more.</summary>
    Normal,
}

/// <summary>What production needs: a basis, and a margin that somebody chose.</summary>
public sealed record Need
{
    /// <summary>What the margin is added to.</summary>
    public NeedBasis Basis { get; init; }
    /// <summary>The margin as a share of the basis, >= 0.</summary>
    public double Share { get; init; }
    /// <summary>The margin as an amount, SI, >= 0, for limits of <see cref="Unit"/>.</summary>
    public double Amount { get; init; }
    /// <summary>The SI unit of <see cref="Amount"/>; null where there is none.</summary>
    public string? Unit { get; init; }

    /// <summary>The least limit that production needs (for lower sides the largest), SI; null where the recordings do not say.</summary>
    /// <param name="limit">The limit.</param>
    public double? Of(TunedLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return Start(limit) is { } basis ? Beyond(basis, limit) : null;
    }

    /// <summary>The same at another filter: of the critical limit there. A bound for the next run is taken as far from the critical limit as it is at the present filter, because the
    /// recordings one by one are not asked again. Null where nothing can trip at that filter.</summary>
    internal double? At(decimal filter, TunedLimit limit)
    {
        if (limit.At(filter) is not { } step) return null;
        if (Basis == NeedBasis.Critical) return Beyond(step.Limit, limit);
        return Of(limit) is { } now && limit.Critical is { } critical ? now + (step.Limit - critical) : null;
    }

    /// <summary>The margin in that, SI, >= 0.</summary>
    internal double MarginOf(TunedLimit limit) => Start(limit) is { } basis ? MarginOf(basis, limit) : 0;

    private double Beyond(double basis, TunedLimit limit) => basis + (limit.IsLower ? -1 : 1) * MarginOf(basis, limit);

    private double MarginOf(double basis, TunedLimit limit) => Math.Abs(basis) * Share + (Unit == limit.Unit ? Amount : 0);

    private double? Start(TunedLimit limit) => Basis switch
    {
        NeedBasis.DistributionFree => limit.Bounds.DistributionFree,
        NeedBasis.Normal => limit.Bounds.Normal,
        _ => limit.Critical,
    };
}
