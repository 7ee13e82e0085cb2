using MonitorSim.Quantities;
using MonitorSim.Tuning;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>A frontier as a line: level up to and including each step's filter, then down (for lower sides up), and off the picture after the last one, where nothing trips.</summary>
/// <param name="scale">Where filters are.</param>
/// <param name="unit">The unit of limits.</param>
/// <param name="open">The limit at the edge of the picture at which whatever the filter nothing trips, in the unit.</param>
internal sealed class Staircase(FilterScale scale, Unit unit, double open)
{
    /// <summary>The corners, from the filter 0 on; none without a step.</summary>
    public IReadOnlyList<Coordinates> Corners(IReadOnlyList<FrontierStep> steps)
    {
        var corners = new List<Coordinates>();
        var from = 0.0;
        foreach (var step in steps)
        {
            var (until, y) = (scale.At(step.Filter), unit.FromSi(step.Limit));
            corners.Add(new(from, y));
            corners.Add(new(until, y));
            from = until;
        }

        if (corners.Count > 0) corners.Add(new(from, open));
        return corners;
    }

    /// <summary>Shades where limits trip, down (for lower sides up) to the edge of the picture.</summary>
    public void Shade(Plot plot, IReadOnlyList<FrontierStep> steps)
    {
        var corners = Corners(steps);
        if (corners.Count == 0) return;
        var area = plot.Add.Polygon([.. corners, new(0, open)]);
        (area.FillColor, area.LineWidth) = (Palette.Limit.WithAlpha(0.14), 0);
    }

    /// <summary>Draws the line.</summary>
    public void Draw(Plot plot, IReadOnlyList<FrontierStep> steps, Color color, float width)
    {
        var corners = Corners(steps);
        if (corners.Count == 0) return;
        var line = plot.Add.ScatterLine(corners.ToArray());
        (line.Color, line.LineWidth) = (color, width);
    }
}
