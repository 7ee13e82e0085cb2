using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis;

/// <summary>What a column of a scenario shows.</summary>
public enum ScenarioQuantity
{
    /// <summary>Position.</summary>
    Position,
    /// <summary>Velocity.</summary>
    Velocity,
    /// <summary>Acceleration; at a jump, that of what begins.</summary>
    Acceleration,
    /// <summary>The torque or force that the axis's plant takes.</summary>
    Torque,
}

/// <summary>One recorded column of a scenario: true value, then noise, then faults, then rounding.</summary>
public sealed record ScenarioColumn
{
    /// <summary>What it shows.</summary>
    public required ScenarioQuantity Of { get; init; }
    /// <summary>Its unit; default SI.</summary>
    [Kind(Kind.Channel)] public Unit? Unit { get; init; }
    /// <summary>Standard deviation of its noise: nearly normal, never beyond six times that, its own in every column; default 0.</summary>
    [Kind(Kind.ChannelDifference)] public Quantity? Noise { get; init; }
    /// <summary>Values are rounded to the nearest multiple, halves away from 0; default 10⁻⁹ of the SI unit.</summary>
    [Kind(Kind.ChannelDifference, Allowed.Positive)] public Quantity? Resolution { get; init; }
    /// <summary>What goes wrong with it, applied in this order.</summary>
    public IReadOnlyList<ChannelFault> Faults { get; init; } = [];

    internal Kind Kind => KindOf(Of);

    internal static Kind KindOf(ScenarioQuantity quantity) => quantity switch
    {
        ScenarioQuantity.Position => Kind.Position,
        ScenarioQuantity.Velocity => Kind.Velocity,
        ScenarioQuantity.Acceleration => Kind.Acceleration,
        _ => Kind.Force,
    };
}
