using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Estimators;

/// <summary><see cref="Plans.EstimatorName.AlphaBeta"/>. Stable for 0 &lt; alpha &lt; 1, 0 &lt; beta &lt; 4 - 2·alpha.</summary>
internal sealed class AlphaBeta(Channel source, SampleTimes times, double alpha, double beta) : SmoothedChannel(source, times)
{
    private double _position, _positionBefore;

    protected override int Reach => 1;

    public override void Carry(Checkpoint checkpoint)
    {
        base.Carry(checkpoint);
        _position = checkpoint.Of(_position);
    }

    protected override double Estimate(int sample)
    {
        var measured = Source.Value(sample);
        var rate = Previous(sample);
        _positionBefore = _position;
        if (double.IsNaN(rate))
        {
            _position = measured;
            return BackwardDifference(sample);
        }

        var step = Times.Seconds(sample - 1, sample);
        var predicted = _position + rate * step;
        var residual = measured - predicted;
        _position = predicted + alpha * residual;
        return rate + beta * residual / step;
    }

    protected override void Undo() => _position = _positionBefore;
}
