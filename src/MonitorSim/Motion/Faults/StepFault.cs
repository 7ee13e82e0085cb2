using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Faults;

/// <summary>The value is off by a constant.</summary>
public sealed record StepFault : ChannelFault
{
    /// <inheritdoc/>
    public override string Fault => "step";
    /// <summary>By how much.</summary>
    [Kind(Kind.ChannelDifference, Allowed.Any)] public required Quantity By { get; init; }

    private protected override void Spoil(ReadOnlySpan<long> times, Span<double> values)
    {
        var by = ExactDouble.Nearest(By.ExactDifference);
        foreach (ref var value in values) value += by;
    }
}
