using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>A row whose measures compare as doubles do: the same stack of rising measures as in <see cref="Tuning.Frontier"/>, of numbers alone. A measure is made only of what may be
/// a step.</summary>
/// <param name="row">The row.</param>
/// <param name="ranking">Doubles in the order of its measures.</param>
internal sealed class RankedRow(SettledStretch row, Ranking ranking)
{
    private readonly LongerStretches _longer = new();
    private readonly CycleClock _clock = row.Clock;

    /// <summary>Finds what may be steps of the frontier.</summary>
    public void Frontier(Staircase found)
    {
        var rising = new Place[64];
        var count = 0;
        var sample = _clock.Seeing(row.From).Sample;
        for (var n = row.From; n < row.Until; n++)
        {
            sample = _clock.SampleAt(n, sample);
            var rank = ranking[sample];
            var start = n;
            // Not less, rather than at least: where nothing is compared (NaN), all are taken off, and the row ends.
            while (count > 0 && !(rising[count - 1].Rank < rank))
            {
                ref readonly var top = ref rising[--count];
                start = top.Start;
                TakeOff(top, n - 1, found);
            }

            if (double.IsNaN(rank)) continue;
            if (count == rising.Length) Array.Resize(ref rising, 2 * count);
            rising[count++] = new(rank, start, n);
        }

        while (count > 0) TakeOff(rising[--count], row.Until - 1, found);
    }

    private void TakeOff(in Place top, int last, Staircase found)
    {
        var length = _clock.Lasting(top.Start, last);
        if (_longer.Beat(length, top.Rank)) return;
        _longer.Add(length, top.Rank);
        row.TryMeasure(_clock.Seeing(top.Cycle), out var smallest);
        found.Add(length, smallest, _clock.TimeOf(top.Start), _clock.TimeOf(last));
    }

    /// <summary>A measure on the stack: its rank, the first cycle of the stretch around it, its own cycle.</summary>
    private readonly record struct Place(double Rank, int Start, int Cycle);
}
