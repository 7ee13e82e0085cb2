namespace MonitorSim.Demo;

/// <summary>One invented recording of the slab saw. Its plan lies beside it in the folder of its name.</summary>
public interface IDemoCase
{
    /// <summary>The folder in <c>traces</c>.</summary>
    string Name { get; }

    /// <summary>What was recorded: the same bytes whenever and wherever it is made.</summary>
    Recording Record();
}
