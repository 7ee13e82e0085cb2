using System.Collections.Immutable;

namespace MonitorSim.Synthesis;

/// <summary>Phases of motion, one after the other, and where they lead.</summary>
/// <param name="Phases">In time; position and velocity go on from one to the next.</param>
/// <param name="Time">When the last one ends, s.</param>
/// <param name="Position">Where, m or rad.</param>
/// <param name="Velocity">How fast, m/s or rad/s.</param>
internal sealed record Motion(ImmutableList<Phase> Phases, decimal Time, decimal Position, decimal Velocity)
{
    /// <summary>Not yet moved.</summary>
    public static readonly Motion AtRest = new([], 0, 0, 0);

    /// <summary>Goes on with constant jerk, and with what moves on top.</summary>
    public Motion Then(decimal duration, decimal acceleration = 0, decimal jerk = 0, IOverlay? onTop = null)
    {
        if (duration <= 0) return this;
        var phase = new Phase(Time, duration, Position, Velocity, acceleration, jerk, onTop);
        return new(Phases.Add(phase), phase.End, phase.PositionAt(duration), phase.VelocityAt(duration));
    }

    /// <summary>The state at its end with what rounding left over taken away.</summary>
    public Motion EndingAt(decimal position, decimal velocity) => this with { Position = position, Velocity = velocity };
}
