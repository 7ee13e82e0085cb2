using Fractions;

namespace MonitorSim.Channels;

/// <summary>A modulo position made continuous: between neighbouring samples it goes the way within (-modulo/2, modulo/2].
/// Samples without a value are passed over.</summary>
internal sealed class UnwrappedChannel(Channel position, Constant modulo) : Channel
{
    private readonly Constant _half = new(modulo.Exact / 2);
    private readonly Constant _minusHalf = new(-modulo.Exact / 2);
    private readonly List<int> _turns = [];
    private int _lastPresent = -1;

    public override Presence At(int sample) => position.At(sample);

    public override double Value(int sample) => position.Value(sample) + Turns(sample) * modulo.Value;

    public override double Error(int sample)
    {
        var turned = Math.Abs(Turns(sample) * modulo.Value);
        return position.Error(sample) + (Math.Abs(position.Value(sample)) + 4 * turned) * Rounding.Unit + 4 * double.Epsilon;
    }

    public override Fraction Exact(int sample) => position.Exact(sample) + Turns(sample) * modulo.Exact;

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
            _turns.Add(k == 0 ? 0 : _turns[k - 1]);
            return;
        }

        var turns = _lastPresent < 0 ? 0 : _turns[_lastPresent];
        if (_lastPresent >= 0)
        {
            // Positions may lie more than one turn apart, so count until the step lies within half a turn.
            var step = Reading.Of(position, k).Minus(position, _lastPresent);
            var turn = (long)Math.Round(-step.Value / modulo.Value);
            while (Reading.Compare(step.Plus(modulo, turn), _half) > 0) turn--;
            while (Reading.Compare(step.Plus(modulo, turn), _minusHalf) <= 0) turn++;
            turns += (int)turn;
        }

        _turns.Add(turns);
        _lastPresent = k;
    }
}
