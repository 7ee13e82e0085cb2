namespace MonitorSim.Traces;

/// <summary>A column while it is being read.</summary>
internal abstract class Cells(int index, string name, string? unit) : IDisposable
{
    /// <summary>Its place in the row.</summary>
    public int Index { get; } = index;
    public string Name { get; } = name;
    public string? Unit { get; } = unit;

    /// <summary>Makes room for the next block of samples.</summary>
    public abstract void Open();

    /// <summary>The finished column of that many samples.</summary>
    public abstract Column ToColumn(int count);

    public abstract void Dispose();
}
