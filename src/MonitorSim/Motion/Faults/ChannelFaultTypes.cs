namespace MonitorSim.Motion.Faults;

/// <summary>The faults that JSON can name. A new one's record goes into this list, in alphabetical order.</summary>
internal static class ChannelFaultTypes
{
    public static readonly IReadOnlyList<Type> All =
        [typeof(DriftFault), typeof(DropOutFault), typeof(ReversedFault), typeof(ScaledFault), typeof(StepFault), typeof(StuckFault)];
}

/// <summary>Stands for a fault whose word could not be read.</summary>
internal sealed record UnknownChannelFault : ChannelFault
{
    public override string Fault => "?";

    private protected override void Spoil(ReadOnlySpan<long> times, Span<double> values) => throw new InvalidOperationException("a scenario that could not be read is not sampled");
}
