namespace MonitorSim.Channels;

/// <summary>The unit by which doubles err.</summary>
internal static class Rounding
{
    /// <summary>Largest relative error of one correctly rounded operation, 2^-53.</summary>
    public const double Unit = 1.1102230246251565e-16;
}
