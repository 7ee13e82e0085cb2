using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>How a recording's file is written. Every member is optional: what is not said is worked out from the file.</summary>
public sealed record TraceFormat
{
    /// <summary>The time column.</summary>
    public TimeFormat? Time { get; init; }
    /// <summary>The sampling rate, where there is no time column.</summary>
    [Kind(Kind.Rate, Allowed.Positive)] public Quantity? Rate { get; init; }
    /// <summary>The character between cells.</summary>
    public string? Delimiter { get; init; }
    /// <summary>The decimal mark, point or comma.</summary>
    public string? Decimal { get; init; }
    /// <summary>Lines before the header.</summary>
    public int? SkipRows { get; init; }
    /// <summary>Whether a row of units follows the header.</summary>
    public bool? UnitsRow { get; init; }
    /// <summary>The text encoding, such as <c>utf-8</c>, <c>utf-16</c> or <c>latin1</c>.</summary>
    public string? Encoding { get; init; }
}

/// <summary>Where a recording's times stand.</summary>
public sealed record TimeFormat
{
    /// <summary>The column's header.</summary>
    public required string Column { get; init; }
    /// <summary><c>s</c>, <c>ms</c>, <c>us</c>, <c>µs</c> or <c>ns</c>; null for ISO 8601 date-times, or where header or units row say it.</summary>
    public string? Unit { get; init; }
}
