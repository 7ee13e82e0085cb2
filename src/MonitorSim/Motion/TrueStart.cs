using MonitorSim.Channels;
using MonitorSim.Plans;

namespace MonitorSim.Motion;

/// <summary>Where an axis is and how fast, when it leaves its recording: as recorded, whatever faults its sensors have.</summary>
internal static class TrueStart
{
    /// <summary>Position and speed at the newest sample that has them.</summary>
    /// <param name="newest">The newest sample up to the moment of leaving; -1: none.</param>
    /// <param name="channels">The channels of the axis.</param>
    /// <param name="times">Of the samples.</param>
    /// <param name="recorded">A recorded quantity, or null.</param>
    public static (double Position, double Velocity) Of(int newest, AxisChannels channels, SampleTimes times, Func<Kind, Channel?> recorded)
    {
        var position = Newest(recorded(Kind.Position), newest);
        var velocity = recorded(Kind.Velocity) is { } channel ? Newest(channel, newest) : Derived(newest, channels, times, recorded(Kind.Position));
        return (position, velocity);
    }

    private static double Newest(Channel? channel, int sample)
    {
        for (var k = sample; channel is not null && k >= 0; k--)
            if (channel.IsPresent(k)) return channel.Value(k);
        return 0;
    }

    // By the plan's estimator; where a fault spoils the positions, by their plain difference.
    private static double Derived(int sample, AxisChannels channels, SampleTimes times, Channel? position)
    {
        if (position is null || sample < 1) return 0;
        if (channels.Position?.First is SimulatedChannel && channels.Velocity is { } velocity) return Newest(velocity.First, sample);
        return position.IsPresent(sample) && position.IsPresent(sample - 1) ? (position.Value(sample) - position.Value(sample - 1)) / times.Seconds(sample - 1, sample) : 0;
    }
}
