using MonitorSim.Channels;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Monitors;

/// <summary>An output that follows a condition with hysteresis and delays (SCA, SSM, SMT). It trips nothing by itself.</summary>
internal abstract class OutputMeasures(Quantity? onDelay, Quantity? offDelay) : Measures
{
    private readonly long _onDelay = onDelay?.Nanoseconds ?? 0, _offDelay = offDelay?.Nanoseconds ?? 0;
    private bool _isOn;
    private long? _holdsSince, _failsSince;

    public override IReadOnlyList<Side> Sides => [];

    public override void Compare(in Cycle cycle, Watch watch, Span<Comparison> comparisons) { }

    public sealed override void Carry(Checkpoint checkpoint) =>
        (_isOn, _holdsSince, _failsSince) = (checkpoint.Of(_isOn), checkpoint.Of(_holdsSince), checkpoint.Of(_failsSince));

    public sealed override bool? Output(in Cycle cycle, bool isActive)
    {
        if (!isActive)
        {
            (_isOn, _holdsSince, _failsSince) = (false, null, null);
            return false;
        }

        var (holdsWithRoom, holds) = Condition(cycle.Sample);
        _holdsSince = holdsWithRoom ? _holdsSince ?? cycle.Time : null;
        _failsSince = holds ? null : _failsSince ?? cycle.Time;
        if (!_isOn && _holdsSince is { } on && cycle.Time - on >= _onDelay) _isOn = true;
        else if (_isOn && _failsSince is { } off && cycle.Time - off >= _offDelay) _isOn = false;
        return _isOn;
    }

    public sealed override bool IsSettled => true;

    public sealed override int NextOutputChange(bool isActive, int from, int until)
    {
        if (!isActive) return until;
        if (_isOn ? _failsSince is not null : _holdsSince is not null) return from;
        for (var k = from; k < until; k++)
        {
            var (holdsWithRoom, holds) = Condition(k);
            if (_isOn ? !holds : holdsWithRoom) return k;
        }

        return until;
    }

    /// <summary>Whether the condition holds with the hysteresis to spare, and whether it holds at all; neither without a value.</summary>
    protected abstract (bool WithRoom, bool AtAll) Condition(int sample);
}
