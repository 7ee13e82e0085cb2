namespace MonitorSim.Traces.Formats;

/// <summary>A recording that is stored as columns rather than as text.</summary>
internal abstract class BinaryTable : IDisposable
{
    /// <summary>The format's name.</summary>
    public abstract string Format { get; }

    /// <summary>The columns that can be read, in the order of the file.</summary>
    public abstract IReadOnlyList<TableColumn> Columns { get; }

    /// <summary>Why others cannot, by name.</summary>
    public IReadOnlyDictionary<string, string> LeftOut => _leftOut;

    /// <summary>What was assumed, as sentences for people.</summary>
    public List<string> Notes { get; } = [];

    private readonly SortedDictionary<string, string> _leftOut = new(StringComparer.Ordinal);

    /// <summary>How many rows each block has that columns of so many values are read in.</summary>
    public abstract IEnumerable<int> Blocks(long length);

    /// <summary>Reads the values of a block.</summary>
    /// <param name="column">One of <see cref="Columns"/>.</param>
    /// <param name="block">The block's index.</param>
    /// <param name="from">Its first row.</param>
    /// <param name="count">How many rows it has.</param>
    public abstract Values Read(TableColumn column, int block, long from, int count);

    /// <summary>Keeps in mind that a column is not read, and why.</summary>
    public void LeaveOut(string name, string why) => _leftOut[name] = why;

    public abstract void Dispose();
}

/// <summary>A column of a <see cref="BinaryTable"/>.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">The unit that the file states, if any.</param>
/// <param name="Length">How many values it has.</param>
/// <param name="IsNumeric">Whether its values are numbers by their type.</param>
internal record TableColumn(string Name, string? Unit, long Length, bool IsNumeric);
