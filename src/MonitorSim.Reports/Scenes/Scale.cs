using System.Globalization;

namespace MonitorSim.Reports.Scenes;

/// <summary>One axis of a picture: from numbers to places, with round numbers to write beside it.</summary>
/// <param name="Least">The number at <paramref name="Begin"/>.</param>
/// <param name="Most">The number at <paramref name="End"/>; more than the least.</param>
/// <param name="Begin">The place of the least number.</param>
/// <param name="End">The place of the largest.</param>
internal sealed record Scale(double Least, double Most, double Begin, double End)
{
    /// <summary>A scale that holds all numbers, with a margin; one that is not there is left out.</summary>
    public static Scale Around(IEnumerable<double> numbers, double margin, double begin, double end)
    {
        var finite = numbers.Where(double.IsFinite).ToList();
        var (least, most) = finite.Count == 0 ? (0, 1) : (finite.Min(), finite.Max());
        var room = most > least ? (most - least) * margin : Math.Max(Math.Abs(most) * 0.1, 1e-9);
        return new(least - room, most + room, begin, end);
    }

    /// <summary>The place of a number.</summary>
    public double At(double number) => Begin + (number - Least) / (Most - Least) * (End - Begin);

    /// <summary>Steps of 1, 2 or 5 times a power of ten, as many as asked for or a few less.</summary>
    public IReadOnlyList<(double At, string Text)> Ticks(int most)
    {
        var raw = (Most - Least) / most;
        var power = (int)Math.Floor(Math.Log10(raw));
        var unit = Math.Pow(10, power);
        var step = unit * (raw / unit <= 1 ? 1 : raw / unit <= 2 ? 2 : raw / unit <= 5 ? 5 : 10);
        var digits = Math.Clamp((int)-Math.Floor(Math.Log10(step) + 1e-9), 0, 15);
        var ticks = new List<(double, string)>();
        for (var k = Math.Ceiling(Least / step); k * step <= Most; k++) ticks.Add((At(k * step), (k * step + 0.0).ToString("F" + digits, CultureInfo.InvariantCulture)));
        return ticks;
    }
}
