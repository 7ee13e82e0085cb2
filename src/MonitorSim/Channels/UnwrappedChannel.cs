using Fractions;
using MonitorSim.Replays;

namespace MonitorSim.Channels;

/// <summary>A modulo position made continuous: between neighbouring samples it goes the way within (-modulo/2, modulo/2].
/// Samples without a value are passed over.</summary>
internal sealed class UnwrappedChannel(Channel position, Constant modulo) : Channel
{
    private readonly Constant _half = new(modulo.Exact / 2);
    private readonly Constant _minusHalf = new(-modulo.Exact / 2);
    private readonly Samples<int> _turns = new();
    private Reading? _last;
    private int _lastTurns;

    public override Presence At(int sample) => position.At(sample);

    public override double Value(int sample) => position.Value(sample) + Turns(sample) * modulo.Value;

    public override double Error(int sample)
    {
        var turned = Math.Abs(Turns(sample) * modulo.Value);
        return position.Error(sample) + (Math.Abs(position.Value(sample)) + 4 * turned) * Rounding.Unit + 4 * double.Epsilon;
    }

    public override Fraction Exact(int sample) => position.Exact(sample) + Turns(sample) * modulo.Exact;

    public override int LooksBack => 1;

    public override void LetGo(int before)
    {
        Turns(before);
        _turns.LetGo(before);
        _last = _last?.Held();
    }

    public override void Carry(Checkpoint checkpoint)
    {
        _turns.Carry(checkpoint);
        (_last, _lastTurns) = (checkpoint.Of(_last), checkpoint.Of(_lastTurns));
    }

    private int Turns(int sample)
    {
        while (_turns.Count <= sample) Extend();
        return _turns[sample];
    }

    private void Extend()
    {
        var k = _turns.Count;
        if (!position.IsPresent(k))
        {
            _turns.Append(_lastTurns);
            return;
        }

        if (_last is { } last)
        {
            // Positions may lie more than one turn apart, so count until the step lies within half a turn.
            var step = Reading.Of(position, k).Minus(last);
            var turn = (long)Math.Round(-step.Value / modulo.Value);
            while (Reading.Compare(step.Plus(modulo, turn), _half) > 0) turn--;
            while (Reading.Compare(step.Plus(modulo, turn), _minusHalf) <= 0) turn++;
            _lastTurns += (int)turn;
        }

        _turns.Append(_lastTurns);
        _last = Reading.Of(position, k);
    }
}
