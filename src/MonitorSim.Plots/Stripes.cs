using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>Slanted lines over a box between two times and from 0 to 1. Each is a line of its own, as the SVG canvas draws no hatches.</summary>
internal static class Stripes
{
    private const int Across = 90;

    /// <summary>Draws them.</summary>
    /// <param name="plot">The panel.</param>
    /// <param name="from">Where the box begins.</param>
    /// <param name="until">Where it ends.</param>
    /// <param name="width">Of the whole panel, in the same unit: stripes are equally dense everywhere.</param>
    /// <param name="color">Of the lines.</param>
    public static void Draw(Plot plot, double from, double until, double width, Color color)
    {
        var (step, slant) = (width / Across, width / Across * 2);
        for (var foot = Math.Floor(from / step) * step - slant; foot < until; foot += step)
        {
            var (left, right) = (Math.Max(foot, from), Math.Min(foot + slant, until));
            if (left >= right) continue;
            var line = plot.Add.Line(left, (left - foot) / slant, right, (right - foot) / slant);
            (line.LineColor, line.LineWidth) = (color, 1);
        }
    }
}
