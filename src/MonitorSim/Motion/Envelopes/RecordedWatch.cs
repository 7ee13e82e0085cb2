using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim.Motion.Envelopes;

/// <summary>How one monitor stands at each sample of a recording: whether it is asked for, arms or watches, and its references.</summary>
/// <remarks>A request stays as it is at the fault; what the recording would have asked for later is not known to the machine either.</remarks>
internal sealed class RecordedWatch
{
    private readonly MonitorRun _run;
    private readonly MonitorPlan _plan;
    private readonly Engine _engine;
    private readonly SampleTimes _times;
    private readonly AxisChannels _channels;
    private readonly Func<int, int> _choice;
    private readonly List<(long Until, int Level)> _givenUp = [];
    private int _stretch, _level = -1, _seen;
    private double _reference = double.NaN, _highest = double.NaN, _lowest = double.NaN;

    /// <param name="run">The monitor, after a replay of the recording.</param>
    /// <param name="plan">The monitor as planned.</param>
    /// <param name="engine">That replay.</param>
    /// <param name="times">Of the samples.</param>
    public RecordedWatch(MonitorRun run, MonitorPlan plan, Engine engine, SampleTimes times)
    {
        (_run, _plan, _engine, _times, _channels, _choice) = (run, plan, engine, times, engine.Channels[run.Axis], run.Track.From(0));
    }

    public MonitorRun Run => _run;

    /// <summary>The limits that watch from a sample on; samples in rising order, each once.</summary>
    public IReadOnlyList<Watcher> At(int sample)
    {
        // Before the first cycle nothing has been asked for yet; a fault there is watched by what that cycle asks for.
        var now = Math.Max(_times[sample], _engine.Clock.TimeOf(0));
        for (; _stretch < _run.Stretches.Count && EndOf(_run.Stretches[_stretch].Last) <= now; _stretch++) Forget();
        if (_stretch == _run.Stretches.Count || _run.Stretches[_stretch].RequestedAt > now) return [];
        var stretch = _run.Stretches[_stretch];
        var watches = stretch.RequestedAt + _run.Delay;
        var position = _channels.Travel?.First is { } travel && travel.IsPresent(sample) ? travel.Value(sample) : double.NaN;
        if (stretch.WatchingAt <= now && !double.IsNaN(position))
        {
            if (double.IsNaN(_reference)) (_reference, _highest, _lowest) = (position, position, position);
            (_highest, _lowest) = (Math.Max(_highest, position), Math.Min(_lowest, position));
        }

        return [.. MonitorWatchers.Of(_plan, new()
        {
            From = Math.Max(0, (watches - now) / 1e9),
            WatchedFor = Math.Max(0, (now - watches) / 1e9),
            Reference = _reference,
            Highest = _highest,
            Lowest = _lowest,
            Position = position,
            Modulo = _channels.Modulo?.Value,
            Levels = LevelsInForce(now),
        }).Select(watcher => watcher with { From = Math.Max(watcher.From, Math.Max(0, (watches - now) / 1e9)) })];
    }

    private void Forget()
    {
        _reference = _highest = _lowest = double.NaN;
        _level = -1;
        _givenUp.Clear();
    }

    // Until the next cycle nobody knows that the request has gone.
    private long EndOf(int cycle) => cycle + 1 < _engine.Done ? _engine.Clock.TimeOf(cycle + 1) : long.MaxValue;

    // The level asked for, and laxer ones that a delay keeps in force.
    private IReadOnlyList<(double From, int Level)> LevelsInForce(long now)
    {
        if (_plan is not Sls { Levels: { } levels }) return [(0, 0)];
        for (; _seen < _engine.Done && _engine.Clock.TimeOf(_seen) <= now; _seen++)
        {
            var choice = _choice(_seen);
            if (_level >= 0 && choice >= 0 && choice != _level) _givenUp.Add((_engine.Clock.TimeOf(_seen) + _run.Delay, _level));
            _level = choice;
        }

        if (_level < 0) return [];
        var present = levels[_level].Limit.Exact;
        var laxer = _givenUp.Where(given => given.Until > now && levels[given.Level].Limit.Exact > present).ToList();
        if (laxer.Count == 0) return [(0, _level)];
        var laxest = laxer.MaxBy(given => levels[given.Level].Limit.Exact);
        return [(0, laxest.Level), ((laxer.Max(given => given.Until) - now) / 1e9, _level)];
    }
}
