using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Faults;

/// <summary>The value is multiplied.</summary>
public sealed record ScaledFault : ChannelFault
{
    /// <inheritdoc/>
    public override string Fault => "scaled";
    /// <summary>By what.</summary>
    public required Fraction Factor { get; init; }

    private protected override void Spoil(ReadOnlySpan<long> times, Span<double> values)
    {
        var factor = ExactDouble.Nearest(Factor);
        foreach (ref var value in values) value *= factor;
    }
}
