namespace MonitorSim.Motion.Faults;

/// <summary>The cells are empty.</summary>
public sealed record DropOutFault : ChannelFault
{
    /// <inheritdoc/>
    public override string Fault => "dropOut";

    private protected override void Spoil(ReadOnlySpan<long> times, Span<double> values) => values.Fill(double.NaN);
}
