namespace MonitorSim.Traces;

/// <summary>What the reader has to know of a recording: how it is cut, what its columns are called and where its samples begin.</summary>
internal sealed record Layout
{
    public required char Delimiter { get; init; }
    public required char Decimal { get; init; }
    /// <summary>The columns' names in the order of the file.</summary>
    public required string[] Names { get; init; }
    /// <summary>The stated units (units row or brackets), null where there is none.</summary>
    public required string?[] Units { get; init; }
    /// <summary>Index of the time column; -1 where there is a rate.</summary>
    public required int Time { get; init; }
    public required string? TimeUnit { get; init; }
    /// <summary>Offset of the first sample in the head.</summary>
    public required int Offset { get; init; }
    /// <summary>Lines before the first sample.</summary>
    public required long LinesBefore { get; init; }
    /// <summary>Whether spaces stand before quotes. Cells without quotes are trimmed in any case, and faster.</summary>
    public required bool SpacedQuotes { get; init; }
    public required DialectFound Found { get; init; }
}
