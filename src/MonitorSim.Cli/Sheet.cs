namespace MonitorSim.Cli;

/// <summary>A table that goes into files: columns, each of one type, and rows.</summary>
/// <param name="Name">The file's name without its extension.</param>
internal abstract record Sheet(string Name)
{
    /// <summary>The columns, in order.</summary>
    public abstract IReadOnlyList<SheetColumn> Columns { get; }

    /// <summary>The rows: a string, int, double, decimal, bool or null for each column, as its type says.</summary>
    public abstract IEnumerable<object?[]> Rows { get; }
}

/// <summary>What a column of a sheet is called, and what it holds.</summary>
internal sealed record SheetColumn(string Name, CellType Type);

/// <summary>What the cells of a column are. Any of them may be missing.</summary>
internal enum CellType
{
    /// <summary>A name, a unit, a word.</summary>
    Text,
    /// <summary>An integer.</summary>
    Count,
    /// <summary>A double.</summary>
    Number,
    /// <summary>Seconds, exact to the nanosecond.</summary>
    Seconds,
    /// <summary>Yes or no.</summary>
    Flag,
}

/// <summary>A table with a row for each thing; columns are added one by one.</summary>
/// <param name="Name">The file's name without its extension.</param>
/// <param name="Things">What the rows are about.</param>
internal sealed record Sheet<T>(string Name, IEnumerable<T> Things) : Sheet(Name)
{
    private readonly List<SheetColumn> _columns = [];
    private readonly List<Func<T, object?>> _cells = [];

    public override IReadOnlyList<SheetColumn> Columns => _columns;

    public override IEnumerable<object?[]> Rows => Things.Select(thing => _cells.Select(cell => cell(thing)).ToArray());

    public Sheet<T> Text(string name, Func<T, string?> of) => With(name, CellType.Text, of);

    public Sheet<T> Count(string name, Func<T, int?> of) => With(name, CellType.Count, thing => of(thing));

    public Sheet<T> Number(string name, Func<T, double?> of) => With(name, CellType.Number, thing => of(thing));

    public Sheet<T> Seconds(string name, Func<T, decimal?> of) => With(name, CellType.Seconds, thing => of(thing));

    public Sheet<T> Flag(string name, Func<T, bool> of) => With(name, CellType.Flag, thing => of(thing));

    private Sheet<T> With(string name, CellType type, Func<T, object?> of)
    {
        _columns.Add(new(name, type));
        _cells.Add(of);
        return this;
    }
}
