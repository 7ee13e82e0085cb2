namespace MonitorSim.Motion.Faults;

/// <summary>The sign is turned.</summary>
public sealed record ReversedFault : ChannelFault
{
    /// <inheritdoc/>
    public override string Fault => "reversed";

    private protected override void Spoil(ReadOnlySpan<long> times, Span<double> values)
    {
        foreach (ref var value in values) value = -value;
    }
}
