namespace MonitorSim.Traces;

/// <summary>What the cells of a column are.</summary>
public enum ColumnKind
{
    /// <summary>Numbers; a cell that is none is an error.</summary>
    Number,
    /// <summary>Words: digital inputs, modes, anything.</summary>
    Word,
}

/// <summary>A column that is to be kept in memory.</summary>
/// <param name="Name">Its header, spelt exactly.</param>
/// <param name="Kind">What its cells are. A column asked for as both is kept as numbers.</param>
public sealed record ColumnRequest(string Name, ColumnKind Kind);
