using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace MonitorSim.Plots;

/// <summary>Filters from 0 on one axis with the longest of them: x = log10(1 + filter/u), u the shortest one that differs from 0. A cycle more or less counts where filters are short.</summary>
internal sealed class FilterScale
{
    private readonly double _unit;

    /// <param name="filters">The filters to be shown, s.</param>
    public FilterScale(IEnumerable<decimal> filters)
    {
        var shown = filters.Select(filter => (double)filter).Where(filter => filter > 0).DefaultIfEmpty(1e-3).ToList();
        _unit = shown.Min();
        Longest = shown.Max();
        IsInMilliseconds = Longest < 10;
    }

    /// <summary>The longest filter, s.</summary>
    public double Longest { get; }

    /// <summary>Whether ticks are in ms, else in s.</summary>
    public bool IsInMilliseconds { get; }

    /// <summary>Where the axis starts: a little before 0, so that a mark there is whole.</summary>
    public double Start => -0.015 * End;

    /// <summary>Where the axis ends: a little after the longest filter, so that what no filter trips has a place.</summary>
    public double End => 1.06 * At(Longest);

    /// <summary>The place of a filter on the axis.</summary>
    public double At(decimal filter) => At((double)filter);

    private double At(double filter) => Math.Log10(1 + filter / _unit);

    /// <summary>Ticks at 0 and at 1, 2 and 5 of each decade, as far apart as they can be read.</summary>
    /// <param name="least">The least distance of two of them, as a share of the axis.</param>
    public NumericManual Ticks(double least)
    {
        var ticks = new NumericManual();
        ticks.AddMajor(0, "0");
        var last = 0.0;
        for (var decade = Math.Floor(Math.Log10(_unit)); decade <= Math.Ceiling(Math.Log10(Longest)); decade++)
        {
            foreach (var digit in new[] { 1, 2, 5 })
            {
                var x = At(digit * Math.Pow(10, decade));
                if (x > End || x - last < least * End) continue;
                ticks.AddMajor(x, (digit * Math.Pow(10, decade + (IsInMilliseconds ? 3 : 0))).ToString("G6", CultureInfo.InvariantCulture));
                last = x;
            }
        }

        return ticks;
    }
}
