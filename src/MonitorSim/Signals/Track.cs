using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Signals;

/// <summary>A boolean over samples, kept as its edges. It begins false; samples are added in order.</summary>
internal sealed class Track
{
    private readonly List<int> _edges = [];
    private int _cursor;

    /// <summary>The samples at which the value changes; the first change is to true.</summary>
    public IReadOnlyList<int> Edges => _edges;

    /// <summary>States the value from that sample on.</summary>
    public void Set(int sample, bool value)
    {
        if (value != (_edges.Count % 2 == 1)) _edges.Add(sample);
    }

    /// <summary>The value at a sample. Fast for samples asked for in rising order.</summary>
    public bool At(int sample)
    {
        while (_cursor > 0 && _edges[_cursor - 1] > sample) _cursor--;
        while (_cursor < _edges.Count && _edges[_cursor] <= sample) _cursor++;
        return _cursor % 2 == 1;
    }

    /// <summary>The next sample after one at which the value changes; null if there is none. Fast for samples asked for in rising order.</summary>
    public int? NextEdge(int sample)
    {
        At(sample);
        return _cursor < _edges.Count ? _edges[_cursor] : null;
    }

    /// <summary>Forgets the changes before a sample that tell nothing of it.</summary>
    public void LetGo(int before)
    {
        var passed = 0;
        while (passed < _edges.Count && _edges[passed] <= before) passed++;
        // Pairs of changes cancel out.
        passed -= passed % 2;
        _edges.RemoveRange(0, passed);
        _cursor = Math.Max(0, _cursor - passed);
    }

    public void Carry(Checkpoint checkpoint) => checkpoint.List(_edges, checkpoint.Of);

    /// <summary>The same with every change that much later, at the first sample that is late enough; what it is at the first sample stays.</summary>
    public Track Delayed(SampleTimes times, long delay)
    {
        var late = new Track();
        for (var e = 0; e < _edges.Count; e++)
        {
            var sample = _edges[e];
            if (sample > 0)
                for (var moment = times[_edges[e]] + delay; sample < times.Count && times[sample] < moment;) sample++;
            if (sample < times.Count) late.Set(sample, e % 2 == 0);
        }

        return late;
    }
}
