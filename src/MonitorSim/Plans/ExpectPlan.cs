using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>One line that a replay is held against.</summary>
public sealed record ExpectPlan
{
    /// <summary>The axis.</summary>
    public required string Axis { get; init; }
    /// <summary>The monitor or stop; <c>*</c>: any.</summary>
    public string? Monitor { get; init; }
    /// <summary>Whether it trips.</summary>
    public bool? Trips { get; init; }
    /// <summary>From and until, both included, between which it trips or does not.</summary>
    [Kind(Kind.Time, Allowed.Any)] public IReadOnlyList<Quantity>? Between { get; init; }
    /// <summary>A signal with which it trips: an edge for each trip and a trip for each edge.</summary>
    public string? TripsWith { get; init; }
    /// <summary>How far trip and edge may lie apart, earlier or later; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Within { get; init; }
    /// <summary>A state that the axis reaches.</summary>
    public AxisState? State { get; init; }
    /// <summary>The state is held at some cycle before this time.</summary>
    [Kind(Kind.Time, Allowed.Any)] public Quantity? Before { get; init; }
}
