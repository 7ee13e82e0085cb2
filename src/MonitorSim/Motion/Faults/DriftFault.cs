using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Faults;

/// <summary>The value creeps away in proportion to the time since the fault began.</summary>
public sealed record DriftFault : ChannelFault
{
    /// <inheritdoc/>
    public override string Fault => "drift";
    /// <summary>How far it is off after <see cref="Over"/>; it goes on at that rate.</summary>
    [Kind(Kind.ChannelDifference, Allowed.Any)] public required Quantity By { get; init; }
    /// <summary>How long that takes.</summary>
    [Kind(Kind.Time, Allowed.Positive)] public required Quantity Over { get; init; }

    private protected override void Spoil(ReadOnlySpan<long> times, Span<double> values)
    {
        var (by, over, start) = (ExactDouble.Nearest(By.ExactDifference), Over.Si, From?.Nanoseconds ?? 0);
        for (var k = 0; k < values.Length; k++) values[k] += by * ((times[k] - start) / 1e9 / over);
    }
}
