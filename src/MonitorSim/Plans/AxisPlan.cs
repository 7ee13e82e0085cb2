using MonitorSim.Monitors;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>One axis: how it moves, where its quantities were recorded, how it stops, what watches it.</summary>
public sealed record AxisPlan
{
    /// <summary>Linear or rotary.</summary>
    [AlwaysWritten] public AxisMotion Motion { get; init; }
    /// <summary>The turn after which a rotary position begins again; null: it does not.</summary>
    [Kind(Kind.Position, Allowed.Positive)] public Quantity? Modulo { get; init; }
    /// <summary>Travel per revolution behind the gear.</summary>
    [Kind(Kind.Feed, Allowed.Positive)] public Quantity? Feed { get; init; }
    /// <summary>Motor turns to output turns, such as <c>5:1</c>.</summary>
    public GearRatio? Gear { get; init; }
    /// <summary>Where the quantities come from.</summary>
    public ChannelsPlan Channels { get; init; } = new();
    /// <summary>At or below this speed the axis counts as standing; default 0.</summary>
    [Kind(Kind.Velocity)] public Quantity? Standstill { get; init; }
    /// <summary>How the axis stops.</summary>
    public StopsPlan Stops { get; init; } = new();
    /// <summary>What moves, for simulated motion.</summary>
    public PlantPlan? Plant { get; init; }
    /// <summary>What watches the axis.</summary>
    public IReadOnlyList<MonitorPlan> Monitors { get; init; } = [];
}
