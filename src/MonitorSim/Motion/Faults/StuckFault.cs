namespace MonitorSim.Motion.Faults;

/// <summary>The value stays as it was at the first sample with the fault.</summary>
public sealed record StuckFault : ChannelFault
{
    /// <inheritdoc/>
    public override string Fault => "stuck";

    private protected override void Spoil(ReadOnlySpan<long> times, Span<double> values) => values.Fill(values[0]);
}
