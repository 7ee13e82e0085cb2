using Fractions;

namespace MonitorSim.Traces;

/// <summary>How a recording is written. A member that is not set is worked out from the file's beginning.</summary>
public sealed record Dialect
{
    /// <summary>The separator between cells, an ASCII character: comma, semicolon, tab or vertical bar where it is worked out.</summary>
    public char? Delimiter { get; init; }

    /// <summary>The decimal mark: point or comma.</summary>
    public char? Decimal { get; init; }

    /// <summary>How many lines stand before the header (or before the first sample, where there is no header); 0 or more. Where it
    /// is not set, comments and lines with another number of cells than the samples have are passed over.</summary>
    public int? SkipRows { get; init; }

    /// <summary>Whether a row of units follows the header.</summary>
    public bool? UnitsRow { get; init; }

    /// <summary>The text encoding: <c>utf-8</c>, <c>utf-16le</c>, <c>utf-16be</c>, <c>latin-1</c>, <c>windows-1252</c>, or another
    /// name registered with IANA.</summary>
    public string? Encoding { get; init; }

    /// <summary>The header of the time column.</summary>
    public string? TimeColumn { get; init; }

    /// <summary>The unit of the time column: <c>s</c>, <c>ms</c>, <c>µs</c> (<c>us</c>), <c>ns</c>, or <c>ISO 8601</c> for date-times.</summary>
    public string? TimeUnit { get; init; }

    /// <summary>Samples a second, exact and more than 0, where there is no time column.</summary>
    public Fraction? Rate { get; init; }
}
