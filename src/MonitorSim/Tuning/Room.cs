namespace MonitorSim.Tuning;

/// <summary>The room of a limit: from what production needs to what the hazard allows. SI.</summary>
public sealed record Room
{
    /// <summary>What production needs; null where the recordings do not say.</summary>
    public double? From { get; init; }
    /// <summary>What <see cref="From"/> starts from.</summary>
    public NeedBasis Basis { get; init; }
    /// <summary>The margin within <see cref="From"/>, SI, >= 0.</summary>
    public double Margin { get; init; }
    /// <summary>What the hazard allows; null where no hazard was stated, or where it allows no limit at all (see <see cref="Chain"/>).</summary>
    public double? To { get; init; }
    /// <summary>Which condition of the hazard decides; null where none was stated.</summary>
    public string? DecidedBy { get; init; }
    /// <summary>From passing the present limit to standstill; null where no hazard was stated.</summary>
    public StoppingChain? Chain { get; init; }
    /// <summary>The least distance of a safeguard at the present limit, m; null where no approach speed was stated.</summary>
    public double? SeparationDistance { get; init; }
    /// <summary>Kinetic energy at the peak, with the present limit, J; null where it is not known what moves.</summary>
    public double? Energy { get; init; }
    /// <summary>What each lever alone would give; empty without a hazard or a need.</summary>
    public IReadOnlyList<Lever> Levers { get; init; } = [];

    /// <summary>How much room there is, negative where it is missing; null where production or hazard says nothing, or where no limit is allowed.</summary>
    public double? Size => To - From;

    /// <summary>Whether there is room; null where production or hazard says nothing.</summary>
    public bool? IsThere => DecidedBy is null || From is null ? null : From <= To;
}

/// <summary>What one change of the chain would give, everything else as it is.</summary>
/// <param name="Name"><c>filter</c>, <c>cycle</c>, <c>inputDelay</c>, <c>reactionDelay</c> or <c>deceleration</c>.</param>
/// <param name="Unit">Its SI unit; <c>1</c> for times as strong a stop.</param>
/// <param name="Present">What it is.</param>
/// <param name="Enough">Where there is room: the worst that leaves some. Where there is none: the least change that makes some (of a cycle the longest that does). Null where no value does.</param>
/// <param name="Extreme">The farthest that it is tried: 0 for times, twice as strong for a stop.</param>
/// <param name="From">What production needs then; null where nothing trips whatever the limit is.</param>
/// <param name="To">What the hazard allows then; null where no limit at all.</param>
public sealed record Lever(string Name, string Unit, double Present, double? Enough, double Extreme, double? From, double? To);
