using System.Text.Json.Serialization;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>A boolean input: a recorded column, or windows of time.</summary>
[ExactlyOneOf("column", "windows")]
public sealed record SignalPlan
{
    /// <summary>The recorded column: 0/1, true/false or on/off in any case, unless <see cref="EqualTo"/> is set.</summary>
    public string? Column { get; init; }
    /// <summary>The value that makes the signal true; numbers compare as numbers, text as text in any case.</summary>
    [JsonPropertyName("equals"), AnyScalar] public string? EqualTo { get; init; }
    /// <summary>Pairs of from and until: true where from &lt;= t &lt; until.</summary>
    [Kind(Kind.Time, Allowed.Any)] public IReadOnlyList<IReadOnlyList<Quantity>>? Windows { get; init; }
}

/// <summary>What acknowledges trips.</summary>
public sealed record AcknowledgePlan
{
    /// <summary>The signal's name.</summary>
    public required string Signal { get; init; }
    /// <summary>The edge that counts.</summary>
    public AcknowledgeEdge On { get; init; }
}
