namespace MonitorSim.Traces;

/// <summary>A column while it is being read.</summary>
internal abstract class Cells(int index, string name, string? unit)
{
    /// <summary>Its place in the row.</summary>
    public int Index { get; } = index;
    public string Name { get; } = name;
    public string? Unit { get; } = unit;

    /// <summary>Makes room for as many samples.</summary>
    public abstract void Grow(int capacity);

    /// <summary>The finished column of that many samples.</summary>
    public abstract Column ToColumn(int count);
}
