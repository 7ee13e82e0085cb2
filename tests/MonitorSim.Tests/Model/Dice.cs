namespace MonitorSim.Tests.Model;

/// <summary>Seeded choices; times on a grid of the recording's step.</summary>
/// <param name="seed">The same seed gives the same choices on every machine.</param>
internal sealed class Dice(int seed)
{
    private readonly Random _random = new(seed);

    public int Next(int below) => _random.Next(below);

    public int Next(int from, int to) => _random.Next(from, to + 1);

    public bool Chance(int percent) => _random.Next(100) < percent;

    public T Pick<T>(params IReadOnlyList<T> choices) => choices[_random.Next(choices.Count)];

    /// <summary>A time of some steps, ns; now and then a nanosecond beside the grid.</summary>
    public long Time(long step, int most) => Math.Max(0, step * Next(most * 2 + 1) / 2 + (Chance(10) ? Pick(-1, 1) : 0));

    public void Shuffle<T>(IList<T> list)
    {
        for (var i = list.Count - 1; i > 0; i--)
        {
            var j = _random.Next(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }
    }
}
