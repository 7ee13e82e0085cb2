using MonitorSim.Replays;

namespace MonitorSim.Channels;

/// <summary>Everything that monitors and stops of one axis may look at.</summary>
internal sealed class AxisChannels
{
    public required string Axis { get; init; }
    /// <summary>Position as recorded; within one turn where the axis is modulo.</summary>
    public Measured? Position { get; init; }
    /// <summary>Position without jumps: the same as <see cref="Position"/> where the axis is not modulo.</summary>
    public Measured? Travel { get; init; }
    public Measured? Velocity { get; init; }
    public Measured? Acceleration { get; init; }
    public Measured? Torque { get; init; }
    public Measured? Temperature { get; init; }
    public Constant? Modulo { get; init; }
    public required Constant Standstill { get; init; }

    /// <summary>How many samples before the newest one are looked at.</summary>
    public int LooksBack => All.Max(channel => (int?)channel.LooksBack) ?? 0;

    /// <summary>See <see cref="Channel.LetGo"/>.</summary>
    public void LetGo(int before)
    {
        foreach (var channel in All) channel.LetGo(before);
    }

    /// <summary>See <see cref="Channel.Carry"/>.</summary>
    public void Carry(Checkpoint checkpoint)
    {
        foreach (var channel in All) channel.Carry(checkpoint);
    }

    // What is derived comes before what it is derived from.
    private IEnumerable<Channel> All => new[] { Acceleration, Velocity, Travel, Torque, Temperature }.OfType<Measured>().SelectMany(measured => measured.Both);

    /// <summary>Whether |v| is at most the standstill speed; false without a speed.</summary>
    public bool IsStanding(int sample) =>
        Velocity is not null && Velocity.IsPresent(sample) && Reading.Compare(Velocity.Largest(sample), Standstill) <= 0;
}
