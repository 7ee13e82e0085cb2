using MonitorSim.Quantities;

namespace MonitorSim.Motion.Fit;

/// <summary>What of a recording a fit looks at.</summary>
public sealed record FitOptions
{
    /// <summary>The axis; null: the plan's only one.</summary>
    public string? Axis { get; init; }
    /// <summary>Where the stretch begins; null: the recording's beginning, for a coast-down where the torque goes off.</summary>
    public Quantity? From { get; init; }
    /// <summary>Where the stretch ends (outside); null: the recording's end, for a coast-down the standstill.</summary>
    public Quantity? Until { get; init; }
    /// <summary>Samples at or below this speed do not count, because friction at standstill has no law; null: the axis's standstill speed, and at
    /// least 2 % of the peak speed, so that noise cannot turn the sign.</summary>
    public Quantity? Above { get; init; }
    /// <summary>How long the windows are over which a move is averaged; null: as long as the noise of the speed asks for.</summary>
    public Quantity? Window { get; init; }
    /// <summary>The known mass or moment of inertia, load side: with it a coast-down tells friction, not only its ratio to inertia.</summary>
    public Quantity? Inertia { get; init; }
    /// <summary>Whether a move's friction may differ by direction. Coulomb friction of each direction then holds the load (forward less it, backward plus it), which
    /// cannot be told from it, and there is no plant.</summary>
    public bool Asymmetric { get; init; }
}
