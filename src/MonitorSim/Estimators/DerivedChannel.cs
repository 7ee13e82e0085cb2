using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Estimators;

/// <summary>A rate derived causally from another channel. It has none at the source's first sample.</summary>
internal abstract class DerivedChannel(Channel source, SampleTimes times) : Channel
{
    private int _first = -1;

    protected Channel Source { get; } = source;

    protected SampleTimes Times { get; } = times;

    /// <summary>How many samples before the newest one the estimator looks at.</summary>
    protected abstract int Reach { get; }

    public override int LooksBack => Reach + Source.LooksBack;

    public override void LetGo(int before) => Oldest(before);

    public override void Carry(Checkpoint checkpoint) => _first = checkpoint.Of(_first);

    public override Presence At(int sample)
    {
        var here = Source.At(sample);
        if (here != Presence.Present) return here;
        var oldest = Oldest(sample);
        return oldest == sample ? Presence.NotYet : Source.IsPresent(oldest) ? Presence.Present : Presence.Missing;
    }

    /// <summary>The oldest sample in reach: while fewer exist than the estimator needs, it uses those there are.</summary>
    protected int Oldest(int sample)
    {
        if (_first < 0)
        {
            var k = 0;
            while (k < sample && Source.At(k) == Presence.NotYet) k++;
            if (Source.At(k) != Presence.NotYet) _first = k;
        }

        return Math.Max(sample - Reach, _first < 0 ? sample : Math.Min(_first, sample));
    }
}
